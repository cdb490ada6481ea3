"""What one line asks for: a dog, its owner, the class; and what its show is."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from scoring.findings import Finding
from scoring.rules.rulebook import RuleBook


@dataclass(frozen=True, slots=True)
class ShowFacts:
    """What the checks need to know of a show.

    `days` are by (breed, variety, sex, class), where set: sex and class are empty for what holds for the whole breed.
    """

    book: RuleBook
    first_day: date
    last_day: date
    entries_close_on: date | None
    days: Mapping[tuple[str, str, str, str], date]
    today: date


@dataclass(frozen=True, slots=True)
class Wanted:
    """One line's values as they would be kept; empty or None where the line does not give one that can be read.

    `breed`, `variety` and `class_code`, titles and certificates are codes.
    """

    name: str = ""
    call_name: str = ""
    breed: str = ""
    variety: str = ""
    sex: str = ""
    born: date | None = None
    studbook: str = ""
    chip: str = ""
    sire: str = ""
    dam: str = ""
    breeder: str = ""
    owner: str = ""
    email: str = ""
    handler: str = ""
    class_code: str = ""
    titles: tuple[str, ...] = ()
    certificates: tuple[str, ...] = ()
    neutered: bool = False


def day_of(facts: ShowFacts, values: Wanted) -> date | None:
    """The day on which the class is judged; None where it is not set yet."""
    parts = [(values.sex, values.class_code), (values.sex, ""), ("", "")]
    keys = [(values.breed, values.variety, sex, code) for sex, code in parts]
    return next((facts.days[key] for key in keys if key in facts.days), None)


@dataclass(frozen=True, slots=True)
class CheckedLine:
    """A line with everything that is to be said of it, and the dog on record that it means, where there is one."""

    line: int
    values: Wanted
    findings: tuple[Finding, ...] = ()
    dog_id: int | None = None

    @property
    def refused(self) -> bool:
        return any(finding.severity == "refuses" for finding in self.findings)

    @property
    def warned(self) -> bool:
        return any(finding.severity == "warns" for finding in self.findings)

    @property
    def standing(self) -> str:
        return "refused" if self.refused else "warned" if self.warned else "good"
