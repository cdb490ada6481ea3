"""What the office's papers print: a show as frozen values, breed by breed, class by class, dog by dog."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Exhibit:
    """One dog of a class, with all that any paper says of it; each paper takes what it may show."""

    number: str
    name: str = ""
    studbook: str = ""
    born: str = ""
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
    """One class of one sex. `grades` are the names of the grades it is judged with; none where it is not graded."""

    name: str
    sex: str
    exhibits: Sequence[Exhibit]
    grades: tuple[str, ...] = ()
    is_published: bool = False

    @property
    def title(self) -> str:
        return f"{self.name}, {'dogs' if self.sex == 'dog' else 'bitches'}"


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
    """A breed, or a variety of it, that competes for best of breed. `forms` are by sex."""

    group: str
    name: str
    judge: str
    ring: str
    day: str
    classes: Sequence[ClassList]
    forms: dict[str, SheetForm] = field(default_factory=dict)
    awards: tuple[str, ...] = ()

    @property
    def dogs(self) -> int:
        return sum(len(one.exhibits) for one in self.classes)


@dataclass(frozen=True, slots=True)
class Programme:
    """A show on paper. `withdrawn` are the entries withdrawn before or on the day, with breed and class."""

    show: str
    days: str
    breeds: Sequence[BreedList]
    withdrawn: tuple[tuple[str, str, Exhibit], ...] = ()
    language: str = "en"

    def exhibits(self) -> Iterator[tuple[BreedList, ClassList, Exhibit]]:
        for breed in self.breeds:
            for one in breed.classes:
                for exhibit in one.exhibits:
                    yield breed, one, exhibit
