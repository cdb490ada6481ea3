"""From the judges' signed awards and finals to award cards; before them, the blank cards that may be needed."""

from collections.abc import Sequence

from django.utils.formats import date_format
from django.utils.translation import gettext as _

from ringside.entries.models import Entry
from ringside.papers.award_cards import AwardCard
from ringside.papers.page import show_days
from ringside.results.awards import BreedAwards, Line, awards_of, breeds_of
from ringside.results.finals import Stands, breed_words, finals_of
from ringside.ring.awards import class_words
from ringside.shows.books import rules_of
from ringside.shows.models import Ring, Show, ShowBreed

SIGNED = ("signed", "published")


def given_cards(show: Show, ring: Ring | None = None) -> list[AwardCard]:
    """A card for each award that a judge has signed: those of the breeds, and the places of the finals.

    Withheld, cancelled and undecided awards have none. Finals belong to no ring: they come with all rings only.
    """
    of_breeds = [
        _given(show, found, line) for found in _awards(show, ring) if found.state in SIGNED for line in found.given
    ]
    finals = [] if ring else [one for one in finals_of(show).stands if one.state in SIGNED]
    return [*of_breeds, *(card for stand in finals for card in _placed(show, stand))]


def blank_cards(show: Show, ring: Ring | None = None) -> list[AwardCard]:
    """A card for each award that a dog entered could come to compete for, and for each place of the finals held."""
    of_breeds = [_blank(show, found, line) for found in _awards(show, ring) for line in found.lines]
    finals = [] if ring else [one for one in finals_of(show).stands if one.row]
    return [*of_breeds, *(card for stand in finals for card in _to_place(show, stand))]


def _awards(show: Show, ring: Ring | None) -> list[BreedAwards]:
    """In the order in which the breeds are judged; those whose best of breed is judged in the ring."""
    return awards_of([one for one in breeds_of(show) if ring is None or one.appointed.ring == ring])


def _given(show: Show, found: BreedAwards, line: Line) -> AwardCard:
    assert line.entry
    return AwardCard(**_of_breed(show, found, line), **_of_dog(show, line.entry))


def _blank(show: Show, found: BreedAwards, line: Line) -> AwardCard:
    return AwardCard(**_of_breed(show, found, line), is_blank=True)


def _of_breed(show: Show, found: BreedAwards, line: Line) -> dict[str, str]:
    breed: ShowBreed = found.card.breed
    told = breed.appointed
    return {
        "show": show.name_and_place,
        "day": date_format(told.day) if told.day else show_days(show),
        "award": line.words,
        "breed": found.title,
        "judge": told.judge.name if told.judge else "",
    }


def _placed(show: Show, stand: Stands) -> Sequence[AwardCard]:
    return [
        AwardCard(**_of_final(show, stand, place), breed=breed_words(entry), **_of_dog(show, entry))
        for place, entry in stand.placed
    ]


def _to_place(show: Show, stand: Stands) -> Sequence[AwardCard]:
    places = range(1, stand.offered.award.places + 1)
    return [AwardCard(**_of_final(show, stand, place), is_blank=True) for place in places]


def _of_final(show: Show, stand: Stands, place: int) -> dict[str, str]:
    judge = stand.row.judge if stand.row else None
    return {
        "show": show.name_and_place,
        "day": show_days(show),
        "award": stand.title,
        "place": _("place {place}").format(place=place) if stand.offered.award.places > 1 else "",
        "judge": judge.name if judge else "",
    }


def _of_dog(show: Show, entry: Entry) -> dict[str, str]:
    return {
        "number": str(entry.number or ""),
        "dog": entry.dog.name,
        "of_class": class_words(rules_of(show), entry.show_class),
    }
