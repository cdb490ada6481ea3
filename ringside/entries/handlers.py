"""Who presents a dog in the ring: named with the entry, mended by the office, forgotten with the old addresses.

The name is for the show's records and for what is said of a judge's appointment; no page or paper of the ring has it.
"""

from datetime import date

from django.db import transaction

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.core.sentences import sentence
from ringside.dogs.models import Dog
from ringside.entries.checking.texts import check_texts
from ringside.entries.models import Entry, EntryFile, EntryLine, EntryRequest
from ringside.entries.reading.cells import clean
from ringside.entries.reading.words import plain
from ringside.people.models import Account
from ringside.shows.access import require
from ringside.shows.models import Show


def readable(name: str) -> str:
    """The name as it is kept; empty is the owner. NotNow where it cannot be a name."""
    name = clean(name)
    said = [sentence(one) for one in check_texts({"handler": name}) if one.severity == "refuses"]
    if said:
        raise NotNow(" ".join(said))
    return name


@transaction.atomic
def name_handler(*, who: Account, entry: Entry, handler: str) -> None:
    """Names another handler, or with an empty name the owner. The audit line holds no name: it is kept for ever."""
    require(who, entry.show, "take-entries")
    entry.handler = readable(handler)
    entry.save(update_fields=["handler"])
    record(who=who, doing="name-handler", show_id=entry.show_id, about=f"entry:{entry.pk}")


def handler_of(dog: Dog, show: Show) -> str:
    """The handler of a dog at a show, as a form's first value."""
    named = Entry.objects.filter(show=show, dog=dog, state=Entry.State.ENTERED).exclude(handler="")
    return named.order_by("id").values_list("handler", flat=True).first() or ""


def forget_old_handlers(before: date) -> None:
    """Handlers of shows that are long over. An owner's name stays, as it does in the results."""
    named = Entry.objects.filter(show__last_day__lt=before).exclude(handler="").prefetch_related("dog__owners")
    gone = [one.pk for one in named if plain(one.handler) not in {plain(own.name) for own in one.dog.owners.all()}]
    Entry.objects.filter(pk__in=gone).update(handler="")
    for asked in EntryRequest.objects.filter(show__last_day__lt=before, texts__has_key="handler"):
        asked.texts = {field: text for field, text in asked.texts.items() if field != "handler"}
        asked.save(update_fields=["texts"])
    for file in EntryFile.objects.filter(show__last_day__lt=before):
        _forget_in_file(file)


def _forget_in_file(file: EntryFile) -> None:
    """A file gives up its column of handlers, what was mended in it, and its own bytes."""
    at = file.columns.get("handler")
    changed = []
    for line in file.lines.all():
        cells = ["" if place == at else cell for place, cell in enumerate(line.cells)]
        mended = {field: text for field, text in line.mended.items() if field != "handler"}
        if (cells, mended) != (line.cells, line.mended):
            line.cells, line.mended = cells, mended
            changed.append(line)
    if changed:
        EntryLine.objects.bulk_update(changed, ["cells", "mended"], batch_size=500)
        EntryFile.objects.filter(pk=file.pk).update(content=b"")
