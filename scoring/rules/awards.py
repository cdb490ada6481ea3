"""Who competes for an award, and why, from the classes' results and the awards already given."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

from scoring.findings import Finding, notes
from scoring.rules.rulebook import Candidates, RuleBook, Sex


@dataclass(frozen=True, slots=True)
class Standing:
    """One entry's result in one class."""

    entry: str
    sex: Sex
    class_code: str
    place: int | None = None
    grade: str | None = None


@dataclass(frozen=True, slots=True)
class Round:
    """The standings that stand together for an award, and the entries that each award given so far went to."""

    standings: Sequence[Standing]
    given: Mapping[str, Collection[str]]

    def winners(self, award_code: str) -> Collection[str]:
        return self.given.get(award_code, ())


@dataclass(frozen=True, slots=True)
class Competitor:
    """An entry that competes for an award, and what lets it."""

    entry: str
    why: Finding


def candidates(book: RuleBook, award_code: str, award_round: Round) -> list[str]:
    """The entries that compete for an award, in the order of the standings, each once; rule as `competitors`."""
    return [competitor.entry for competitor in competitors(book, award_code, award_round)]


def competitors(book: RuleBook, award_code: str, award_round: Round) -> list[Competitor]:
    """The entries that compete for an award, in the order of the standings, each once, with the reason.

    Rule: an entry competes where any of the award's lines of candidates takes it; the winner of the certificate does
    not compete for its reserve.
    Source: the rule book's awards, each with its own.
    Limits: for an award of each sex, give the standings of that sex alone. An award that a judge may withhold may go
    to none of them.
    Raises: KeyError for an award that the book does not know.
    """
    award = book.award(award_code)
    beaten = {entry for line in award.candidates if line.second_to for entry in award_round.winners(line.second_to)}
    found: dict[str, Competitor] = {}
    for standing in award_round.standings:
        why = _why(award.candidates, standing, award_round)
        if why and standing.entry not in beaten:
            found.setdefault(standing.entry, Competitor(standing.entry, why))
    return list(found.values())


def _why(lines: Sequence[Candidates], standing: Standing, award_round: Round) -> Finding | None:
    """What lets a standing compete: the first line that takes it; None where none does."""
    return next((why for line in lines if (why := _taken(line, standing, award_round))), None)


def _taken(line: Candidates, standing: Standing, award_round: Round) -> Finding | None:
    if line.grades and standing.grade not in line.grades:
        return None
    if line.other_sex_than and not _is_other_sex(line.other_sex_than, standing, award_round):
        return None
    if line.second_to:
        return _as_second(line.second_to, standing, award_round)
    if line.winners_of:
        holds = [award for award in line.winners_of if standing.entry in award_round.winners(award)]
        return notes("competes-as-winner", entry=standing.entry, holds=holds) if holds else None
    if standing.class_code in line.classes and (not line.places or standing.place in line.places):
        facts = {"class": standing.class_code, "place": standing.place, "grade": standing.grade}
        return notes("competes-from-class", entry=standing.entry, **facts)
    return None


def _as_second(award: str, standing: Standing, award_round: Round) -> Finding | None:
    if standing.place != 2 or not _won_by_holder(award, standing, award_round):
        return None
    return notes("competes-as-second", entry=standing.entry, to=award, **{"class": standing.class_code})


def _is_other_sex(award: str, standing: Standing, award_round: Round) -> bool:
    sexes = {other.sex for other in award_round.standings if other.entry in award_round.winners(award)}
    return bool(sexes) and standing.sex not in sexes


def _won_by_holder(award: str, second: Standing, award_round: Round) -> bool:
    """Whether the award's winner of that sex came first in that class."""
    return any(
        first.place == 1 and (first.sex, first.class_code) == (second.sex, second.class_code)
        for first in award_round.standings
        if first.entry in award_round.winners(award)
    )
