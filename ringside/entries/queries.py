"""What the entries room reads: a show's facts, its files and their lines as they stand, the dogs they may mean."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import date
from hashlib import sha256
from typing import Any

from django.db.models import Count, Max, Q, QuerySet
from django.utils.translation import gettext_lazy as _
from django.utils.translation import pgettext_lazy

from ringside.core.models import AuditLine
from ringside.dogs.models import Dog
from ringside.entries.checking import CheckedLine, Dates, Known, KnownDog, ShowFacts, Wanted, check_line, compare
from ringside.entries.models import Entry, EntryFile, EntryLine
from ringside.entries.reading.cells import clean
from ringside.entries.reading.dates import style_of
from ringside.shows.appointed import days_of
from ringside.shows.books import rules_of
from ringside.shows.models import Show
from scoring.findings import warns

CHUNK = 400
WAITING, TAKEN, ASIDE = EntryLine.State.WAITING, EntryLine.State.TAKEN, EntryLine.State.ASIDE

# The filters of a file's page: what each is called, and which lines it shows.
FILTERS: dict[str, tuple[Any, Q]] = {
    "all": (pgettext_lazy("lines", "All"), Q()),
    "good": (pgettext_lazy("lines", "Good"), Q(state=WAITING, standing="good")),
    "warned": (_("Good, with a warning"), Q(state=WAITING, standing="warned")),
    "refused": (_("To be mended"), Q(state=WAITING, standing="refused")),
    "taken": (pgettext_lazy("lines", "Taken"), Q(state=TAKEN)),
    "aside": (pgettext_lazy("lines", "Set aside"), Q(state=ASIDE)),
}


def facts_of(show: Show, today: date) -> ShowFacts:
    return ShowFacts(
        book=rules_of(show),
        first_day=show.first_day,
        last_day=show.last_day,
        entries_close_on=show.entries_close,
        days={(breed, variety, sex, code): day for _id, breed, variety, sex, code, day in days_of(show)},
        today=today,
    )


def texts_of(line: EntryLine, columns: dict[str, int]) -> dict[str, str]:
    """The line's cells by field, cleaned; what was mended stands in place of what was read."""
    cells = line.cells
    read = {field: clean(cells[at]) if at < len(cells) else "" for field, at in columns.items()}
    return {**read, **{field: clean(text) for field, text in line.mended.items()}}


def dates_of(file: EntryFile, lines: Iterable[EntryLine]) -> Dates:
    """How the file's dates are read. Some day first and some month first stays doubtful whatever was chosen."""
    column = file.columns.get("born")
    cells = [] if column is None else [line.cells[column] for line in lines if column < len(line.cells)]
    return Dates(file.date_style, not file.date_certain or style_of(cells).mixed)


def check_one(line: EntryLine, file: EntryFile, facts: ShowFacts, dates: Dates) -> CheckedLine:
    """A line by itself, without the others of its file."""
    checked = check_line(line.line, texts_of(line, file.columns), facts, dates)
    extra = sum(bool(cell.strip()) for cell in line.cells[len(file.headings) :])
    if not extra or line.mended:
        return checked
    slipped = warns("too-many-cells", cells=len(line.cells), headings=len(file.headings))
    return replace(checked, findings=(*checked.findings, slipped))


def check_all(file: EntryFile, lines: Sequence[EntryLine], facts: ShowFacts) -> list[CheckedLine]:
    """All waiting lines with everything that is to be said of them; in the order given."""
    dates = dates_of(file, lines)
    alone = [check_one(line, file, facts, dates) for line in lines]
    known = known_dogs(file.show, [line.values for line in alone])
    return compare(alone, known, facts.book.classes_per_dog)


def known_dogs(show: Show, wanted: Sequence[Wanted]) -> Known:
    """The dogs on record that these lines may mean, with the classes of this show in which they are entered."""
    by_field: dict[str, set[Any]] = {
        "chip": {values.chip for values in wanted if values.chip},
        "studbook": {values.studbook for values in wanted if values.studbook},
        "born": {values.born for values in wanted if values.born},
    }
    breeds = {values.breed for values in wanted}
    dogs: dict[int, Dog] = {}
    for field, values in by_field.items():
        for some in _chunks(sorted(values)):
            narrowed = Q() if field == "chip" else Q(breed__in=breeds)
            dogs |= {dog.pk: dog for dog in Dog.objects.filter(narrowed, **{f"{field}__in": some})}
    entered = _entered(show, dogs)
    return Known([_known(dog, entered[dog.pk]) for dog in dogs.values()])


def _entered(show: Show, dogs: Iterable[int]) -> dict[int, list[str]]:
    found: dict[int, list[str]] = defaultdict(list)
    for some in _chunks(sorted(dogs)):
        entries = Entry.objects.filter(show=show, dog__in=some).exclude(state=Entry.State.WITHDRAWN)
        for dog, code in entries.values_list("dog_id", "show_class__code"):
            found[dog].append(code)
    return found


def _known(dog: Dog, entered: Sequence[str]) -> KnownDog:
    return KnownDog(dog.pk, dog.name, dog.breed, dog.sex, dog.born, dog.studbook, dog.chip, tuple(entered))


def _chunks(values: Sequence[Any]) -> Iterable[Sequence[Any]]:
    return (values[at : at + CHUNK] for at in range(0, len(values), CHUNK))


def stamp_of(show: Show) -> str:
    """Changes whenever something changes on which the findings of a waiting line depend."""
    entries = Entry.objects.filter(show=show).aggregate(
        Max("id"), Count("id"), withdrawn=Count("id", Q(state="withdrawn"))
    )
    dogs = Dog.objects.aggregate(Max("id"))
    days = days_of(show)
    parts = (show.rules, show.overlays, show.first_day, show.last_day, show.entries_close, entries, dogs, days)
    return sha256(repr(parts).encode()).hexdigest()


def other_entries(entry: Entry) -> list[Entry]:
    """The same dog's other entries in this show."""
    found = Entry.objects.filter(show=entry.show_id, dog=entry.dog_id).exclude(pk=entry.pk)
    return list(found.select_related("show_class").order_by("id"))


def audit_of_entry(entry: Entry) -> QuerySet[AuditLine]:
    """Who changed what of an entry, or entered its dog here."""
    about = [f"entry:{entry.pk}", f"dog:{entry.dog_id}"]
    lines = AuditLine.objects.filter(scope=f"show:{entry.show_id}", about__in=about)
    return lines.select_related("who").order_by("-at", "-id")[:50]


def counts_of(file: EntryFile) -> dict[str, int]:
    """How many lines each filter shows."""
    found = file.lines.aggregate(
        **{code: Count("id", condition) for code, (_name, condition) in FILTERS.items() if code != "all"}
    )
    return {"all": file.lines.count(), **found}


def lines_of(file: EntryFile, shown: str) -> QuerySet[EntryLine]:
    _name, condition = FILTERS.get(shown, FILTERS["all"])
    return file.lines.filter(condition).select_related("entry").order_by("line", "id")
