"""A breed's awards on the results desk: what is given, what is missing, whether they are published."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date

from django.db.models import Exists, OuterRef
from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from ringside.core.sentences import apart
from ringside.entries.models import Entry
from ringside.results.models import (
    AwardCorrection,
    AwardGiven,
    AwardsPublication,
    PaperAwards,
    Placing,
    Publication,
)
from ringside.results.queries import as_decisions
from ringside.results.wording import state_words
from ringside.ring.awards import BreedCard, award_words, cards_of, class_words
from ringside.ring.queries import breed_said
from ringside.shows.appointed import appointments_of
from ringside.shows.models import Show, ShowBreed, ShowClass
from scoring.rules.award_card import Offered


@dataclass(frozen=True)
class Line:
    """One award of the breed: `state` is given, withheld, cancelled or undecided; `entry` is set where it is given."""

    offered: Offered
    state: str
    entry: Entry | None

    @property
    def words(self) -> str:
        return award_words(self.offered)

    @property
    def state_words(self) -> str:
        return state_words(self.state)


@dataclass(frozen=True)
class BreedAwards:
    """A breed's awards. `state` is one of: to come, being judged, signed, published.

    `missing` holds them back from being published, each in full and short enough for a cell.
    """

    card: BreedCard
    title: str
    state: str
    lacks: tuple[tuple[str, str], ...]

    @property
    def missing(self) -> list[str]:
        return [words for words, _ in self.lacks]

    @property
    def summary(self) -> str:
        return apart(short for _, short in self.lacks)

    @property
    def lines(self) -> list[Line]:
        return [line_of(self.card, one) for one in self.card.awards]

    @property
    def given(self) -> list[Line]:
        return [line for line in self.lines if line.state == "given"]

    @property
    def undecided(self) -> list[str]:
        return [line.words for line in self.lines if line.state == "undecided"]


def line_of(card: BreedCard, one: Offered) -> Line:
    decided = card.decided.get(one.code)
    if isinstance(decided, str):
        return Line(one, "given", card.entries.get(decided))
    if one.code in card.cancelled:
        return Line(one, "cancelled", None)
    return Line(one, "undecided" if decided is None else "withheld", None)


def breeds_of(show: Show) -> list[ShowBreed]:
    """The breeds with dogs in them, in the order they are judged."""
    dogs = Entry.objects.filter(show_class__show_breed=OuterRef("pk"), state=Entry.State.ENTERED)
    found = ShowBreed.objects.filter(Exists(dogs), show=show).select_related(
        "show", "judge", "ring", "awards_judged_by"
    )
    breeds = found.prefetch_related(appointments_of()).order_by("id")
    return sorted(breeds, key=lambda breed: breed.appointed.day or date.max)


def awards_of(breeds: Sequence[ShowBreed]) -> list[BreedAwards]:
    """The awards of several breeds of one show: the same number of queries however many there are.

    What is published is read as published: corrected places count, and a later change on the ring's card does not.
    """
    public = AwardsPublication.objects.filter(show_breed__in=breeds).values_list("show_breed_id", flat=True)
    given: dict[int, list[AwardGiven]] = {breed_id: [] for breed_id in public}
    for row in AwardGiven.objects.filter(show_breed__in=given):
        given[row.show_breed_id].append(row)
    classes = Publication.objects.filter(show_class__show_breed__in=breeds).values_list("show_class_id", flat=True)
    placings: dict[int, list[Placing]] = {class_id: [] for class_id in classes}
    for placing in Placing.objects.filter(show_class__in=placings):
        placings[placing.show_class_id].append(placing)
    published = {class_id: as_decisions(rows) for class_id, rows in placings.items()}
    passed = _passed_on(given)
    cards = [
        replace(card, signed={**card.signed, **published}, passed_on=passed.get(card.breed.pk, frozenset()))
        for card in cards_of(breeds)
    ]
    unattested = PaperAwards.objects.filter(show_breed__in=breeds, page="", why_no_page="")
    lack_page = set(unattested.values_list("show_breed_id", flat=True))
    return [_awards(card, given.get(card.breed.pk), published.keys(), card.breed.pk in lack_page) for card in cards]


def _passed_on(given: Mapping[int, Sequence[AwardGiven]]) -> dict[int, frozenset[tuple[str, str]]]:
    """The awards of each breed that went to a reserve, with its entry: the rules ask no more of that one."""
    touched = [breed_id for breed_id, rows in given.items() if any(row.cancelled for row in rows)]
    if not touched:
        return {}
    rows = AwardCorrection.objects.filter(show_breed_id__in=touched, cause=AwardCorrection.Cause.PASSED_ON)
    found: dict[int, set[tuple[str, str]]] = {}
    told = rows.filter(after__isnull=False).values_list("show_breed_id", "award", "after")
    for breed_id, award, entry in told:
        found.setdefault(breed_id or 0, set()).add((award, str(entry)))
    return {breed_id: frozenset(awards) for breed_id, awards in found.items()}


def _awards(
    card: BreedCard, given: list[AwardGiven] | None, published: Collection[int], lacks_page: bool
) -> BreedAwards:
    title = breed_said(card.breed)
    if given is not None:
        decided = {row.code: str(row.entry_id) if row.entry_id else False for row in given if not row.cancelled}
        cancelled = frozenset(row.code for row in given if row.cancelled)
        return BreedAwards(replace(card, decided=decided, cancelled=cancelled), title, "published", ())
    return BreedAwards(card, title, _state(card), (*_card_lacks(card, lacks_page), *_class_lacks(card, published)))


def _state(card: BreedCard) -> str:
    if card.sheet and card.sheet.signed is not None:
        return "signed"
    return "being judged" if card.decided or len(card.unsigned) < len(card.classes) else "to come"


def _card_lacks(card: BreedCard, lacks_page: bool) -> Iterator[tuple[str, str]]:
    sheet = card.sheet
    if lacks_page and (sheet is None or sheet.signed is None):
        words = _("a photo of the page that the judge signed, or the reason why there is none")
        yield words, _("the judge's signed page")
    elif sheet is None or sheet.signed is None:
        yield _("the judge's signature on the awards"), _("the judge's signature")
    if sheet and (sheet.disputed or sheet.incomplete):
        yield _("two devices disagree about an award; the judge settles it"), _("two devices disagree")
    if sheet and sheet.held:
        words = _("something was written after the signature; the judge signs again or sets it aside")
        yield words, _("changes after the signature")


def _class_lacks(card: BreedCard, published: Collection[int]) -> Iterator[tuple[str, str]]:
    if card.unsigned:
        short = ngettext("{count} class to be signed", "{count} classes to be signed", len(card.unsigned))
        yield (
            _("classes to be signed: {classes}").format(classes=_listed(card, card.unsigned)),
            short.format(count=len(card.unsigned)),
        )
    waiting = [one for one in card.classes if one.pk not in published and one not in card.unsigned]
    if waiting:
        short = ngettext("{count} class to be published first", "{count} classes to be published first", len(waiting))
        yield (
            _("classes to be published first: {classes}").format(classes=_listed(card, waiting)),
            short.format(count=len(waiting)),
        )


def _listed(card: BreedCard, classes: Sequence[ShowClass]) -> str:
    return apart(class_words(card.book, one) for one in classes)
