"""Who competes for an award, and why, from the classes' results and the awards already given."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

from scoring.findings import Finding, notes
from scoring.rules.rulebook import Candidates, RuleBook, Sex

# Which dog a standing is of: the dog that it names, or the entry by itself. The word keeps the two apart.
Whose = tuple[str, str]


@dataclass(frozen=True, slots=True)
class Standing:
    """One entry's result in one class. `dog` tells which entries are one dog's; without it an entry is a dog."""

    entry: str
    sex: Sex
    class_code: str
    place: int | None = None
    grade: str | None = None
    dog: str | None = None

    @property
    def whose(self) -> Whose:
        return ("dog", self.dog) if self.dog else ("entry", self.entry)


@dataclass(frozen=True, slots=True)
class Round:
    """The standings that stand together for an award, and the entries that each award given so far went to."""

    standings: Sequence[Standing]
    given: Mapping[str, Collection[str]]

    def winners(self, award_code: str) -> Collection[str]:
        return self.given.get(award_code, ())

    def holders(self, award_code: str) -> set[Whose]:
        """The dogs that an award went to, as far as they stand here."""
        entries = self.winners(award_code)
        return {standing.whose for standing in self.standings if standing.entry in entries}

    def of_class(self, standing: Standing) -> list[Standing]:
        """All that stood in the class of this one."""
        key = standing.sex, standing.class_code
        return [other for other in self.standings if (other.sex, other.class_code) == key]


@dataclass(frozen=True, slots=True)
class Competitor:
    """An entry that competes for an award, and what lets it."""

    entry: str
    why: Finding


def candidates(book: RuleBook, award_code: str, award_round: Round) -> list[str]:
    """The entries that compete for an award, in the order of the standings; rule as `competitors`."""
    return [competitor.entry for competitor in competitors(book, award_code, award_round)]


def competitors(book: RuleBook, award_code: str, award_round: Round) -> list[Competitor]:
    """The entries that compete for an award, in the order of the standings, each dog once, with the reason.

    Rule: a dog competes where any of the award's lines of candidates takes one of its entries, with the entry that
    the first such line takes; the winner of the certificate does not compete for its reserve, from whatever class.
    Source: the rule book's awards, each with its own. That a dog in several classes is one competitor: memory.
    Limits: for an award of each sex, give the standings of that sex alone. An award that a judge may withhold may go
    to none of them.
    Raises: KeyError for an award that the book does not know.
    """
    award = book.award(award_code)
    out = {dog for line in award.candidates if line.second_to for dog in award_round.holders(line.second_to)}
    found: dict[Whose, tuple[int, Competitor]] = {}
    for line in award.candidates:
        for at, standing in enumerate(award_round.standings):
            why = _taken(line, standing, award_round)
            if why and standing.whose not in out:
                found.setdefault(standing.whose, (at, Competitor(standing.entry, why)))
    return [competitor for _, competitor in sorted(found.values(), key=lambda one: one[0])]


def whose(entry: str, standings: Sequence[Standing]) -> Whose:
    """Which dog an entry is; itself where it does not stand here."""
    return next((standing.whose for standing in standings if standing.entry == entry), ("entry", entry))


def _taken(line: Candidates, standing: Standing, award_round: Round) -> Finding | None:
    """What lets a standing compete by this line; None where it does not."""
    if line.grades and standing.grade not in line.grades:
        return None
    if line.other_sex_than and not _is_other_sex(line.other_sex_than, standing, award_round):
        return None
    why = _why(line, standing, award_round)
    return None if why and line.unbeaten and _is_beaten(line, standing, award_round) else why


def _why(line: Candidates, standing: Standing, award_round: Round) -> Finding | None:
    """Where the line finds it: as a second, as a winner or in a class."""
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
    if not _is_second_to(award, standing, award_round):
        return None
    return notes("competes-as-second", entry=standing.entry, to=award, **{"class": standing.class_code})


def _is_second_to(award: str, standing: Standing, award_round: Round) -> bool:
    """Whether it is placed second in a class where the award's winner, by whatever entry, came first."""
    if standing.place != 2:
        return False
    firsts = {other.whose for other in award_round.of_class(standing) if other.place == 1}
    return not firsts.isdisjoint(award_round.holders(award))


def _is_beaten(line: Candidates, standing: Standing, award_round: Round) -> bool:
    """Whether the dog stood behind another in another class of the line; behind the winner of `second_to` is none."""
    return any(
        other.place != 1
        and any(each.place for each in award_round.of_class(other))
        and not (line.second_to and _is_second_to(line.second_to, other, award_round))
        for other in award_round.standings
        if (other.whose, other.sex) == (standing.whose, standing.sex)
        and other.class_code != standing.class_code
        and (not line.classes or other.class_code in line.classes)
    )


def _is_other_sex(award: str, standing: Standing, award_round: Round) -> bool:
    sexes = {other.sex for other in award_round.standings if other.entry in award_round.winners(award)}
    return bool(sexes) and standing.sex not in sexes
