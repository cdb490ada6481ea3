"""Pairing: a tablet that shows a one-time code works in a ring, as judge, steward or writer, until the day ends."""

import secrets
from datetime import date, datetime, time, timedelta

from django.core.cache import cache
from django.db import transaction
from django.utils import timezone
from django.utils.crypto import salted_hmac

from ringside.core.audit import record
from ringside.core.denied import Denied
from ringside.people.models import Account
from ringside.ring.models import Pairing
from ringside.shows.access import require
from ringside.shows.models import Ring

# No letter or digit that is taken for another when read out across a ring; 27^8 codes.
LETTERS = "ABCDEFGHJKMNPQRTUVWXY346789"
LENGTH = 8
GOOD_FOR = timedelta(minutes=15)
# Wrong codes in 15 minutes: from one address (all tablets of a show share one), and on the whole site.
MOST_WRONG_FROM_ADDRESS = 20
MOST_WRONG_IN_ALL = 200


def plain(code: str) -> str:
    """A code as typed, without its gap and in capitals."""
    return "".join(sign for sign in code.upper() if sign.isalnum())


def digest_of(code: str) -> str:
    return salted_hmac("ringside.pairing", plain(code), algorithm="sha256").hexdigest()


@transaction.atomic
def make_code(*, who: Account, ring: Ring, kind: str, day: date) -> str:
    """A new code for a ring, day and role; it is shown once and not kept."""
    require(who, ring.show, "pair-tablets")
    code = "".join(secrets.choice(LETTERS) for _ in range(LENGTH))
    pairing = Pairing.objects.create(
        ring=ring, day=day, kind=Pairing.Kind(kind), code_digest=digest_of(code), made_by=who, made_at=timezone.now()
    )
    record(who=who, doing="make-pairing-code", show_id=ring.show_id, about=f"pairing:{pairing.pk}", kind=kind)
    return f"{code[:4]} {code[4:]}"


def pair(*, code: str, address: str) -> Pairing:
    """The pairing that a code stands for, used up now. Denied says why not, without saying which codes exist."""
    _limit(address)
    with transaction.atomic():
        found = Pairing.objects.select_for_update().filter(code_digest=digest_of(code)).first()
        now = timezone.now()
        if found and found.used_at is None and found.ends_at is None and now - found.made_at <= GOOD_FOR:
            found.used_at, found.ends_at = now, end_of(max(found.day, timezone.localdate()))
            found.save(update_fields=["used_at", "ends_at"])
            record(who=None, doing="pair-tablet", show_id=found.ring.show_id, about=f"pairing:{found.pk}")
            return found
    _count(address)
    raise Denied(
        "This code cannot be used: it is mistyped, used already, or older than 15 minutes. "
        "Ask the show secretary for a new one."
    )


@transaction.atomic
def end(*, who: Account, pairing: Pairing) -> None:
    """The tablet stops working at once; what it still holds is kept by it and held here if it comes."""
    require(who, pairing.ring.show, "pair-tablets")
    Pairing.objects.filter(pk=pairing.pk).update(ends_at=timezone.now())
    record(who=who, doing="end-pairing", show_id=pairing.ring.show_id, about=f"pairing:{pairing.pk}")


def standing(pairing_id: object) -> Pairing | None:
    """The pairing of a session while it lasts."""
    if not isinstance(pairing_id, int):
        return None
    return (
        Pairing.objects.select_related("ring__show")
        .filter(pk=pairing_id, used_at__isnull=False, ends_at__gt=timezone.now())
        .first()
    )


def end_of(day: date) -> datetime:
    return timezone.make_aware(datetime.combine(day, time.max))


def _keys(address: str) -> dict[str, int]:
    return {f"pairing-wrong-{address}": MOST_WRONG_FROM_ADDRESS, "pairing-wrong": MOST_WRONG_IN_ALL}


def _limit(address: str) -> None:
    if any(cache.get(key, 0) >= most for key, most in _keys(address).items()):
        raise Denied("Too many wrong codes. Wait a quarter of an hour, or sign in with a code by e-mail.", status=429)


def _count(address: str) -> None:
    for key in _keys(address):
        # Not incr(): in the database it would shorten the wait to the cache's own five minutes.
        cache.set(key, cache.get(key, 0) + 1, GOOD_FOR.total_seconds())
