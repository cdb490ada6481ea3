"""Forgetting how to reach a person: address, account, photos and links go; the name stays in results, as rules ask."""

from datetime import date, timedelta

from django.db import transaction
from django.db.models import Q, QuerySet
from django.utils import timezone

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.entries.consents.keeping import forget_consents, forget_old_addresses
from ringside.entries.handlers import forget_old_handlers
from ringside.entries.models import Entry, EntryFile, EntryLine
from ringside.entries.web.keeping import forget_entering
from ringside.home.models import CorrectionRequest, Share
from ringside.home.readers import forget_readers, let_read_since
from ringside.people.models import Account, Person
from ringside.photos.models import Photo
from ringside.shows.models import Role, ShowBreed


@transaction.atomic
def forget_contact(*, who: Account, typed: str) -> None:
    """Deletes the account and every copy of its address. Whoever still works for a show gives that up first."""
    if typed.strip().lower() != who.email:
        raise NotNow("Nothing is deleted: type your e-mail address as it stands on the page, to be sure.")
    if Role.objects.filter(account=who).exists() or who.runs_site:
        raise NotNow(
            "You still work for a show here, and its records need to reach you. Ask its secretary to take your role "
            "away first."
        )
    _forget(who)


def _forget(who: Account) -> None:
    people = list(Person.objects.filter(account=who))
    addresses = {who.email, *(person.email.lower() for person in people if person.email)}
    for address in addresses:
        _forget_in_files(address)
    forget_entering(account=who, addresses=addresses)
    _delete_photos(Photo.objects.filter(uploaded_by=who))
    # A photo that somebody else sent, such as the ring's, stays; the link to it was this person's.
    Photo.objects.filter(consent__person__in=people).update(share_token=None, consent=None)
    Share.objects.filter(made_by=who, withdrawn_at=None).update(withdrawn_at=timezone.now())
    forget_readers(account=who, addresses=addresses)
    # What was corrected stays as a correction; the words in which it was asked for go.
    CorrectionRequest.objects.filter(asked_by=who).delete()
    forget_consents(people)
    Person.objects.filter(account=who).update(email="", account=None)
    who.delete()
    record(who=None, doing="forget-contact", about=f"people:{','.join(str(person.pk) for person in people)}"[:80])


def _delete_photos(photos: QuerySet[Photo]) -> None:
    """Rows at once, the files when that holds."""
    files = [photo.file for photo in photos]
    photos.delete()
    transaction.on_commit(lambda: [file.storage.delete(file.name) for file in files])


def forget_old_contacts(*, days: int, today: date) -> int:
    """Forgets everybody who has had nothing to do with a show for `days` days; how many they were.

    Limit: whoever has a role in any show, or runs the site, stays. A show counts until its last day, leave to read a
    dog's critiques from the day it was given. Results, names and
    critiques stay.
    """
    before = today - timedelta(days=days)
    late = Entry.objects.filter(show__last_day__gte=before)
    judged = ShowBreed.objects.filter(show__last_day__gte=before)
    old = (
        Account.objects.filter(runs_site=False, roles=None, joined_at__date__lt=before)
        .filter(Q(last_login=None) | Q(last_login__date__lt=before))
        .exclude(people__dogs__entries__in=late)
        .exclude(people__breeds_judged__in=judged)
        .exclude(email__in=let_read_since(before).values("email"))
        .distinct()
    )
    forget_old_addresses(before)
    forget_old_handlers(before)
    found = list(old.order_by("id"))
    for account in found:
        with transaction.atomic():
            _forget(account)
    return len(found)


def _forget_in_files(address: str) -> None:
    """Takes the address out of the lines of clubs' files; a file that held it gives up its own bytes."""
    lines = EntryLine.objects.filter(cells__icontains=address) | EntryLine.objects.filter(mended__icontains=address)
    files = set()
    for line in lines:
        line.cells = [_without(cell, address) for cell in line.cells]
        line.mended = {field: _without(text, address) for field, text in line.mended.items()}
        line.save(update_fields=["cells", "mended"])
        files.add(line.file_id)
    EntryFile.objects.filter(pk__in=files).update(content=b"")


def _without(text: str, address: str) -> str:
    return "" if address in text.lower() else text
