"""A breed's award card: which awards it offers, who competes for each, what is to be said of what the judge decided."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass

from scoring.findings import Finding, warns
from scoring.rules.awards import Competitor, Round, Standing, competitors, whose
from scoring.rules.rulebook import SEXES, Award, Candidates, RuleBook, Sex


@dataclass(frozen=True, slots=True)
class Offered:
    """An award as a breed offers it: where there is one for each sex, that of one sex."""

    award: Award
    sex: Sex | None

    @property
    def code(self) -> str:
        """Its name on the card: `cacib-dog` and `cacib-bitch`, but `best-of-breed`."""
        return self.award.code if self.sex is None else f"{self.award.code}-{self.sex}"


@dataclass(frozen=True, slots=True)
class Card:
    """The standings of the breed's signed classes, and what is decided, by an offered award's code.

    A decision is the entry that gets the award, or False where the judge withholds it; undecided awards are not there.
    """

    standings: Sequence[Standing]
    decided: Mapping[str, str | bool]


def offered(book: RuleBook) -> tuple[Offered, ...]:
    """The awards of a breed in the order they are given: each sex's, dogs first, then those between the sexes."""
    of_each_sex = [award for award in book.awards if award.level == "sex"]
    of_breed = [award for award in book.awards if award.level == "breed"]
    by_sex = (Offered(award, sex) for sex in SEXES for award in of_each_sex)
    return (*by_sex, *(Offered(award, None) for award in of_breed))


def within_reach(book: RuleBook, classes: Collection[tuple[Sex, str]]) -> list[Offered]:
    """The offered awards that a dog of one of these classes could come to compete for."""
    return [one for one in offered(book) if _is_within_reach(book, one.award, one.sex, classes)]


def _is_within_reach(book: RuleBook, award: Award, sex: Sex | None, classes: Collection[tuple[Sex, str]]) -> bool:
    def reaches(line: Candidates) -> bool:
        named = (*line.winners_of, *([line.second_to] if line.second_to else []))
        from_class = any(code in line.classes and sex in (None, its_sex) for its_sex, code in classes)
        return from_class or any(_is_within_reach(book, book.award(code), sex, classes) for code in named)

    return any(reaches(line) for line in award.candidates)


def competing(book: RuleBook, one: Offered, card: Card) -> list[Competitor]:
    """Who competes for an offered award; rule, source and limits as `awards.competitors`."""
    standings = [standing for standing in card.standings if one.sex in (None, standing.sex)]
    return competitors(book, one.award.code, Round(standings, given_so_far(book, card)))


def given_so_far(book: RuleBook, card: Card) -> dict[str, list[str]]:
    """The entries that each award went to, those of both sexes together."""
    given: dict[str, list[str]] = {}
    for one in offered(book):
        entry = card.decided.get(one.code)
        if isinstance(entry, str):
            given.setdefault(one.award.code, []).append(entry)
    return given


def waits_for(book: RuleBook, one: Offered, card: Card) -> list[Offered]:
    """The undecided awards on whose winners it depends who competes for this one."""
    return [
        other
        for other in offered(book)
        if other.award.code in _named(one.award)
        and (one.sex is None or other.sex in (None, one.sex))
        and other.code not in card.decided
    ]


def _named(award: Award) -> set[str]:
    codes = {code for line in award.candidates for code in (*line.winners_of, line.second_to, line.other_sex_than)}
    return {code for code in codes if code is not None}


def check_card(book: RuleBook, card: Card) -> Iterator[Finding]:
    """What does not go with the rules in what the judge decided; the judge's word stands all the same.

    Rule: an award goes to a dog that competes for it, and is withheld only where the rules let a judge withhold it.
    Source: the rule book's awards, each with its own.
    """
    for one in offered(book):
        entry = card.decided.get(one.code)
        if isinstance(entry, str) and not _competes(book, one, card, entry):
            yield warns("award-without-right", award=one.award.code, entry=entry)
        elif entry is False and not one.award.may_be_withheld:
            yield warns("award-not-to-be-withheld", award=one.award.code)


def _competes(book: RuleBook, one: Offered, card: Card, entry: str) -> bool:
    """Whether its dog competes, with this entry or another."""
    dogs = {whose(each.entry, card.standings) for each in competing(book, one, card)}
    return whose(entry, card.standings) in dogs


def passes_to(book: RuleBook, award_code: str) -> Award | None:
    """The reserve whose holder gets an award that is cancelled later; None where it then stays with nobody.

    Rule: a reserve moves up only where the rules say so. The reserve itself then stays with nobody.
    Source: the rule book's awards (United Kingdom: meaning of the two certificates, read; elsewhere from memory).
    """
    return next((award for award in book.awards if award.reserve_of == award_code and award.moves_up), None)
