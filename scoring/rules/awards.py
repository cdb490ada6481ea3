"""Who competes for an award, from the classes' results and the awards already given."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass

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


def candidates(book: RuleBook, award_code: str, award_round: Round) -> list[str]:
    """The entries that compete for an award, in the order of the standings, each once.

    Rule: an entry competes where any of the award's lines of candidates takes it; the winner of the certificate does
    not compete for its reserve.
    Source: the rule book's awards, each with its own.
    Limits: for an award of each sex, give the standings of that sex alone. An award that a judge may withhold may go
    to none of them.
    Raises: KeyError for an award that the book does not know.
    """
    award = book.award(award_code)
    beaten = {entry for line in award.candidates if line.second_to for entry in award_round.winners(line.second_to)}
    found = [standing.entry for standing in award_round.standings if _competes(award.candidates, standing, award_round)]
    return list(dict.fromkeys(entry for entry in found if entry not in beaten))


def _competes(lines: Sequence[Candidates], standing: Standing, award_round: Round) -> bool:
    return any(_takes(line, standing, award_round) for line in lines)


def _takes(line: Candidates, standing: Standing, award_round: Round) -> bool:
    if line.grades and standing.grade not in line.grades:
        return False
    if line.other_sex_than and not _is_other_sex(line.other_sex_than, standing, award_round):
        return False
    if line.second_to:
        return standing.place == 2 and standing.class_code in _classes_won(line.second_to, standing.sex, award_round)
    if line.winners_of:
        return any(standing.entry in award_round.winners(award) for award in line.winners_of)
    return standing.class_code in line.classes and (not line.places or standing.place in line.places)


def _is_other_sex(award: str, standing: Standing, award_round: Round) -> bool:
    sexes = {other.sex for other in award_round.standings if other.entry in award_round.winners(award)}
    return bool(sexes) and standing.sex not in sexes


def _classes_won(award: str, sex: Sex, award_round: Round) -> Iterator[str]:
    """The classes in which the award's winner of that sex came first."""
    for standing in award_round.standings:
        if standing.entry in award_round.winners(award) and standing.sex == sex and standing.place == 1:
            yield standing.class_code
