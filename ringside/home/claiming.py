"""Claiming an entry with the code on its number card, where its address is wrong or missing.

The code proves the card, a sign-in code sent by e-mail proves the address; only both together attach a person to a dog.
"""

import secrets
from collections.abc import Iterable
from datetime import timedelta

from django.db import transaction
from django.db.models import F
from django.utils import timezone
from django.utils.crypto import constant_time_compare, salted_hmac

from ringside.core import tries
from ringside.core.audit import record
from ringside.core.denied import Denied, NotNow
from ringside.dogs.models import Ownership
from ringside.entries.models import Entry
from ringside.fees.actions import follow
from ringside.home.models import ClaimCode
from ringside.people.actions import person_for
from ringside.people.models import Account

# No letter or digit that is taken for another on paper; 27^8 codes.
LETTERS = "ABCDEFGHJKMNPQRTUVWXY346789"
LENGTH = 8
GOOD_FOR = timedelta(days=60)  # after the show
MOST_TRIES = 50
MOST_WRONG_FROM_ADDRESS = 20
MOST_WRONG_FOR_NUMBER = 10
MOST_WRONG_IN_ALL = 200


def code_of(claim: ClaimCode) -> str:
    """The code as the card prints it; the same each time it is printed."""
    number = int(salted_hmac("ringside.claim", f"{claim.entry_id}:{claim.salt}", algorithm="sha256").hexdigest(), 16)
    signs = []
    for _ in range(LENGTH):
        number, sign = divmod(number, len(LETTERS))
        signs.append(LETTERS[sign])
    return "".join(signs)


@transaction.atomic
def codes_for(*, entries: Iterable[Entry]) -> dict[int, str]:
    """The claim code of each entry, made where there is none; none for entries whose code is used."""
    wanted = list(entries)
    known = set(ClaimCode.objects.filter(entry__in=wanted).values_list("entry_id", flat=True))
    ClaimCode.objects.bulk_create(
        [ClaimCode(entry=entry, salt=secrets.token_hex(16)) for entry in wanted if entry.pk not in known],
        ignore_conflicts=True,
    )
    return {claim.entry_id: code_of(claim) for claim in ClaimCode.objects.filter(entry__in=wanted, used_at=None)}


def without_address(entries: Iterable[Entry]) -> list[Entry]:
    """The entries whose owners cannot be written to: none has an account."""
    wanted = list(entries)
    reached = Ownership.objects.filter(dog__entries__in=wanted, person__account__isnull=False)
    dogs = set(reached.values_list("dog_id", flat=True))
    return [entry for entry in wanted if entry.dog_id not in dogs]


def entry_for(*, number: int, code: str, address: str) -> Entry:
    """The entry that the card is of. Denied does not say whether number or code is wrong."""
    most = {
        f"from-{address}": MOST_WRONG_FROM_ADDRESS,
        f"number-{number}": MOST_WRONG_FOR_NUMBER,
        "in-all": MOST_WRONG_IN_ALL,
    }
    tries.limit("claim", most)
    typed = "".join(sign for sign in code.upper() if sign.isalnum())
    standing = ClaimCode.objects.filter(
        entry__number=number,
        used_at=None,
        tries__lt=MOST_TRIES,
        entry__show__last_day__gte=timezone.localdate() - GOOD_FOR,
    ).select_related("entry__dog")
    for claim in standing:
        if constant_time_compare(code_of(claim), typed):
            return claim.entry
    standing.update(tries=F("tries") + 1)
    tries.count("claim", most)
    raise Denied("This number and code do not belong together, or the code is used already. Ask the show's office.")


@transaction.atomic
def attach(*, account: Account, entry_id: int) -> Entry:
    """Makes the signed-in person an owner of the dog and uses the code up."""
    claim = ClaimCode.objects.select_for_update().filter(entry_id=entry_id, used_at=None).first()
    if claim is None:
        raise NotNow("This code was used in the meantime. Ask the show's office.")
    entry = Entry.objects.select_related("dog").get(pk=entry_id)
    _own(account, entry)
    claim.used_at, claim.used_by = timezone.now(), account
    claim.save(update_fields=["used_at", "used_by"])
    record(who=account, doing="claim-entry", show_id=entry.show_id, about=f"entry:{entry.pk}")
    return entry


def _own(account: Account, entry: Entry) -> None:
    """Under the first owner's name as entered. One without address may stand for namesakes: a new person comes.

    In the place of the one who stood there: the first owner of a dog is charged for it.
    """
    owners = Ownership.objects.filter(dog=entry.dog).select_related("person").order_by("id")
    first = owners.first()
    person = person_for(name=first.person.name if first else account.email, email=account.email)
    nameless = list(owners.filter(person__account=None, person__name=person.name).exclude(person=person))
    replaced = [one.person for one in nameless]
    if nameless and not owners.filter(person=person).exists():
        place = nameless.pop(0)
        place.person = person
        place.save(update_fields=["person"])
    owners.filter(pk__in=[one.pk for one in nameless]).delete()
    Ownership.objects.get_or_create(dog=entry.dog, person=person)
    for old in replaced:
        follow(old=old, new=person)
