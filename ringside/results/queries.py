"""A class as it stands: what the judge has decided, what is still missing, and whether it is published."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from django.db.models import Count, Q
from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from ringside.core.sentences import apart, sentence
from ringside.entries.models import Entry
from ringside.results.models import Critique, PaperClass, Placing, Publication
from ringside.results.wording import presence_words
from ringside.ring.advice import advice_on
from ringside.ring.models import Sheet
from ringside.ring.queries import breed_said
from ringside.shows.appointed import appointments_of, with_appointed
from ringside.shows.books import class_name, grade_name, rules_of
from ringside.shows.models import Show, ShowClass
from scoring.findings import Finding
from scoring.rules.rulebook import Grade

ASSESSES = ("mark.", "choice.", "set.", "number.", "yes.", "praise.", "remark")


@dataclass(frozen=True)
class Row:
    """One dog of a class. `place` counts from 1; `points` is how many points the sheet speaks of."""

    entry: Entry
    presence: str
    grade: str
    grade_name: str
    reason: str
    place: int | None
    points: int
    critique_signed: bool
    missing: tuple[str, ...]

    @property
    def presence_words(self) -> str:
        return presence_words(self.presence)


@dataclass(frozen=True)
class Compiled:
    """A class on the results desk. `state` is one of: to come, being judged, signed, published."""

    show_class: ShowClass
    title: str
    state: str
    rows: tuple[Row, ...]
    missing: tuple[str, ...]
    findings: tuple[Finding, ...] = field(default=())

    @property
    def is_complete(self) -> bool:
        return not self.missing and not any(row.missing for row in self.rows)

    @property
    def summary(self) -> str:
        """What is missing, short enough for one cell."""
        dogs = sum(bool(row.missing) for row in self.rows)
        words = ngettext("something for {dogs} of {all} dog", "something for {dogs} of {all} dogs", len(self.rows))
        return apart([*self.missing, *([words.format(dogs=dogs, all=len(self.rows))] if dogs else [])])

    @property
    def words(self) -> list[str]:
        """The core's findings in words, each once."""
        return list(dict.fromkeys(sentence(finding) for finding in self.findings))


def classes_of(show: Show) -> list[ShowClass]:
    """The classes with dogs in them, in catalogue order."""
    return list(
        with_appointed(ShowClass.objects.filter(show_breed__show=show))
        .select_related("show_breed__show", "show_breed__judge", "show_breed__ring", "judged_by", "card", "publication")
        .prefetch_related(appointments_of("show_breed__"))
        .annotate(dogs=Count("entries", filter=Q(entries__state=Entry.State.ENTERED)))
        .filter(dogs__gt=0)
        .order_by("day_now", "show_breed_id", "-sex", "order", "id")  # dogs before bitches
    )


def title_of(show_class: ShowClass) -> str:
    breed = show_class.show_breed
    rule = rules_of(breed.show).class_rule(show_class.code)
    sex = _("dogs") if show_class.sex == "dog" else _("bitches")
    # A language whose names of classes hold the word for class leaves it out here.
    return _("{breed}, {name} class, {sex}").format(breed=breed_said(breed), name=class_name(rule), sex=sex)


def compiled(show_class: ShowClass) -> Compiled:
    """The class from the judge's signed card, or from what is written so far where nothing is signed."""
    found = _compiled(show_class, _gathered([show_class]))
    findings = [Finding(**finding) for finding in advice_on(show_class)["findings"]]
    return replace(found, findings=tuple(_numbered(finding, found.rows) for finding in findings))


def compiled_many(classes: Sequence[ShowClass]) -> list[Compiled]:
    """Many classes at once, without the core's advice: the same number of queries however many there are."""
    gathered = _gathered(classes)
    return [_compiled(show_class, gathered) for show_class in classes]


@dataclass(frozen=True)
class Gathered:
    """What several classes are compiled from, each fetched once; `sheets` by their key."""

    entries: dict[int, list[Entry]]
    sheets: dict[str, Sheet]
    published: dict[int, list[Placing]]
    papers: dict[int, PaperClass]


def _gathered(classes: Sequence[ShowClass]) -> Gathered:
    entries: dict[int, list[Entry]] = {one.pk: [] for one in classes}
    found = Entry.objects.filter(show_class__in=classes, state=Entry.State.ENTERED).select_related("dog")
    for entry in found.order_by("number", "id"):
        entries[entry.show_class_id].append(entry)
    wanted = Q(show_class__in=classes) | Q(entry__show_class__in=classes)
    public = Publication.objects.filter(show_class__in=classes).values_list("show_class_id", flat=True)
    published: dict[int, list[Placing]] = {class_id: [] for class_id in public}
    for placing in Placing.objects.filter(show_class__in=published):
        published[placing.show_class_id].append(placing)
    papers = {paper.show_class_id: paper for paper in PaperClass.objects.filter(show_class__in=classes)}
    return Gathered(entries, {sheet.key: sheet for sheet in Sheet.objects.filter(wanted)}, published, papers)


def _compiled(show_class: ShowClass, gathered: Gathered) -> Compiled:
    card = gathered.sheets.get(f"class:{show_class.pk}")
    placings = gathered.published.get(show_class.pk)
    decided = decisions(card) if placings is None else as_decisions(placings)
    grades = {grade.code: grade for grade in rules_of(show_class.show_breed.show).grades_for(show_class.code)}
    sheets = [(entry, gathered.sheets.get(f"entry:{entry.pk}")) for entry in gathered.entries[show_class.pk]]
    rows = [_row(entry, sheet, decided, grades) for entry, sheet in sheets]
    rows.sort(key=lambda row: (row.place is None, row.place or 0, row.entry.number or 0))
    return Compiled(
        show_class=show_class,
        title=title_of(show_class),
        state=_state(placings is not None, card, any(sheet for _, sheet in sheets)),
        rows=tuple(rows),
        missing=tuple(_missing_on(card, rows, grades, gathered.papers.get(show_class.pk))),
    )


def _state(is_published: bool, card: Sheet | None, is_touched: bool) -> str:
    if is_published:
        return "published"
    if card and card.signed is not None:
        return "signed"
    return "being judged" if card or is_touched else "to come"


def decisions(card: Sheet | None) -> dict[str, Any]:
    if card is None:
        return {}
    found: dict[str, Any] = card.fields if card.signed is None else card.signed
    return found


def as_decisions(placings: Sequence[Placing]) -> dict[str, Any]:
    """Published results, corrections included, as a class card says them."""
    places = {placing.place: str(placing.entry_id) for placing in placings if placing.place}
    decided: dict[str, Any] = {"places": [places.get(place, "") for place in range(1, max(places, default=0) + 1)]}
    for name in ("presence", "grade", "reason"):
        decided |= {f"{name}.{placing.entry_id}": getattr(placing, name) for placing in placings}
    return decided


def _row(entry: Entry, sheet: Sheet | None, decided: dict[str, Any], grades: dict[str, Grade]) -> Row:
    key = str(entry.pk)
    grade = decided.get(f"grade.{key}") or ""
    presence = decided.get(f"presence.{key}") or "present"
    reason = decided.get(f"reason.{key}") or ""
    missing = []
    if presence == "present" and grades and not grade:
        missing.append(_("grade"))
    if grade and grade in grades and grades[grade].needs_reason and not reason:
        missing.append(_("reason for the grade"))
    if sheet and sheet.disputed:
        missing.append(_("two devices disagree; the judge settles it"))
    return Row(
        entry=entry,
        presence=presence,
        grade=grade,
        grade_name=grade_name(grades[grade]) if grade in grades else "",
        reason=reason,
        place=_place(decided.get("places") or [], key),
        points=sum(name.startswith(ASSESSES) for name in sheet.fields) if sheet else 0,
        critique_signed=bool(sheet and sheet.signed is not None),
        missing=tuple(missing),
    )


def _place(places: list[str], key: str) -> int | None:
    return places.index(key) + 1 if key in places else None


def _missing_on(card: Sheet | None, rows: list[Row], grades: dict[str, Grade], paper: PaperClass | None) -> list[str]:
    missing = []
    if card is None or card.signed is None:
        # A judge may place no dog at all: signed without places is complete.
        if not any(row.place for row in rows) and any(_may_be_placed(row, grades) for row in rows):
            missing.append(_("places"))
        missing.append(_signature_words(paper))
    if card and (card.disputed or card.incomplete):
        missing.append(_("two devices disagree about the class; the judge settles it"))
    if card and card.held:
        missing.append(_("something was written after the signature; the judge signs again or sets it aside"))
    return missing


def _signature_words(paper: PaperClass | None) -> str:
    if paper and not paper.is_attested:
        return _("a photo of the page that the judge signed, or the reason why there is none")
    return _("the judge's signature")


def _may_be_placed(row: Row, grades: dict[str, Grade]) -> bool:
    barred = row.grade in grades and not grades[row.grade].may_be_placed
    return row.presence == "present" and not barred


def _numbered(finding: Finding, rows: Sequence[Row]) -> Finding:
    """The finding with catalogue numbers in the place of entry ids, as people speak of dogs."""
    numbers = {str(row.entry.pk): row.entry.number or row.entry.dog.name for row in rows}
    return Finding(finding.code, finding.severity, {k: _as_number(v, numbers) for k, v in finding.facts.items()})


def _as_number(value: Any, numbers: dict[str, Any]) -> Any:
    if isinstance(value, list | tuple):
        return [_as_number(member, numbers) for member in value]
    return numbers.get(value, value) if isinstance(value, str) else value


def critiques_for(account: Any) -> list[Critique]:
    """The published critiques of a person's own dogs, newest show first."""
    return list(
        Critique.objects.published()
        .filter(entry__dog__owners__account=account, language="en")
        .select_related("entry__dog", "entry__show", "entry__show_class__show_breed")
        .order_by("-entry__show__first_day", "entry__number", "id")
        .distinct()
    )
