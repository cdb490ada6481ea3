"""What the office's papers print: a show as frozen values, breed by breed, class by class, dog by dog.

Every word in it is in the language that the papers are printed in, the one that is active; days are dates.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date

from ringside.dogs.wording import SEXES


@dataclass(frozen=True, slots=True)
class Exhibit:
    """One dog of a class, with all that any paper says of it; each paper takes what it may show."""

    number: str
    name: str = ""
    studbook: str = ""
    born: date | None = None
    months: int | None = None
    sire: str = ""
    dam: str = ""
    breeder: str = ""
    owners: tuple[str, ...] = ()
    presence: str = "present"
    grade: str = ""
    place: int | None = None
    reason: str = ""


@dataclass(frozen=True, slots=True)
class ClassList:
    """One class of one sex. `grades` are the names of the grades it is judged with; none where it is not graded.

    `judge`, `ring` and `day` are empty (the day: None) where they are the breed's.
    """

    name: str
    sex: str
    exhibits: Sequence[Exhibit]
    grades: tuple[str, ...] = ()
    is_published: bool = False
    judge: str = ""
    ring: str = ""
    day: date | None = None

    @property
    def title(self) -> str:
        return f"{self.name}, {SEXES[self.sex]}"


@dataclass(frozen=True, slots=True)
class Scale:
    """A two-sided point as a judge's paper shows it: its name, and the word at either end."""

    name: str
    low: str
    high: str


@dataclass(frozen=True, slots=True)
class SheetForm:
    """What a judge's sheet asks of one breed and sex: points with seven boxes, and questions with their answers."""

    scales: tuple[Scale, ...]
    questions: tuple[tuple[str, tuple[str, ...]], ...] = ()


@dataclass(frozen=True, slots=True)
class BreedList:
    """A breed, or a variety of it, that competes for best of breed. `forms` are by sex.

    `judge`, `ring` and `day` are those of best of breed and the other awards.

    `awards` are the names of the awards it is judged for, `given` those published: name, number and dog. `points` are
    number, dog and points where the body counts them.
    """

    group: str
    name: str
    judge: str
    ring: str
    day: date | None
    classes: Sequence[ClassList]
    forms: dict[str, SheetForm] = field(default_factory=dict)
    awards: tuple[str, ...] = ()
    given: tuple[tuple[str, str, str], ...] = ()
    points: tuple[tuple[str, str, int], ...] = ()

    @property
    def dogs(self) -> int:
        return sum(len(one.exhibits) for one in self.classes)

    def where(self, one: ClassList) -> tuple[str, str, date | None]:
        """Judge, ring and day of one of its classes."""
        return one.judge or self.judge, one.ring or self.ring, one.day or self.day

    @property
    def parts(self) -> "list[BreedList]":
        """The breed as each of its judges, rings and days has it; the awards are where best of breed is judged."""
        own = (self.judge, self.ring, self.day)
        places = dict.fromkeys(self.where(one) for one in self.classes)
        if self.awards or not places:
            places.setdefault(own)
        return [
            replace(
                self,
                judge=judge,
                ring=ring,
                day=day,
                classes=[one for one in self.classes if self.where(one) == (judge, ring, day)],
                awards=self.awards if (judge, ring, day) == own else (),
            )
            for judge, ring, day in places
        ]


@dataclass(frozen=True, slots=True)
class FinalList:
    """A published final: place, number, dog and breed of those placed, first to last."""

    title: str
    judge: str
    placed: tuple[tuple[str, str, str, str], ...]


@dataclass(frozen=True, slots=True)
class GroupLine:
    """A brace, a group or a young handler: what the catalogue calls it, and its dogs, each with number and name."""

    name: str
    dogs: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class GroupList:
    """One group competition of the show with what is entered in it."""

    title: str
    entered: tuple[GroupLine, ...]


@dataclass(frozen=True, slots=True)
class Programme:
    """A show on paper. `withdrawn` are the entries withdrawn before or on the day, with breed and class.

    `corrections` are what was changed after publishing: what, as it was, as it is, and why. `addresses` are those that
    exhibitors agreed to have printed, by name.
    """

    show: str
    days: str
    breeds: Sequence[BreedList]
    withdrawn: tuple[tuple[str, str, Exhibit], ...] = ()
    finals: tuple[FinalList, ...] = ()
    corrections: tuple[tuple[str, str, str, str], ...] = ()
    groups: tuple[GroupList, ...] = ()
    addresses: Mapping[str, str] = field(default_factory=dict)

    def exhibits(self) -> Iterator[tuple[BreedList, ClassList, Exhibit]]:
        for breed in self.breeds:
            for one in breed.classes:
                for exhibit in one.exhibits:
                    yield breed, one, exhibit
