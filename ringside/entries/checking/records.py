"""A line against the dogs on record and the entries of this show."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from ringside.entries.checking.wanted import Wanted
from ringside.entries.reading.words import plain
from scoring.findings import Finding, refuses, warns


@dataclass(frozen=True, slots=True)
class KnownDog:
    """A dog on record; `entered` are the classes in which it is entered in this show."""

    id: int
    name: str
    breed: str
    sex: str
    born: date
    studbook: str
    chip: str
    entered: tuple[str, ...] = ()


class Known:
    """The dogs that the lines of a file might mean, by what tells them apart."""

    def __init__(self, dogs: Sequence[KnownDog]) -> None:
        self.by_chip: Mapping[str, KnownDog] = {dog.chip: dog for dog in dogs if dog.chip}
        self.by_name = {(plain(dog.name), dog.breed, dog.born): dog for dog in dogs}
        self.by_studbook = {(plain(dog.studbook), dog.breed): dog for dog in dogs if dog.studbook}

    def of(self, values: Wanted) -> tuple[KnownDog | None, list[Finding]]:
        """The dog on record that is meant, and what speaks against it."""
        dog = self.by_chip.get(values.chip) if values.chip else None
        if dog is not None:
            return self._by_chip(dog, values)
        dog = self.by_name.get((plain(values.name), values.breed, values.born)) if values.born else None
        if dog is None:
            return None, list(self._studbook(values))
        if dog.chip and values.chip:
            return None, [refuses("dog-has-other-chip", field="chip", name=dog.name)]
        return dog, list(_differences(dog, values))

    def _by_chip(self, dog: KnownDog, values: Wanted) -> tuple[KnownDog | None, list[Finding]]:
        if plain(dog.name) != plain(values.name) or dog.breed != values.breed:
            return None, [refuses("chip-of-another-dog", field="chip", name=dog.name)]
        return dog, list(_differences(dog, values))

    def _studbook(self, values: Wanted) -> Iterator[Finding]:
        dog = self.by_studbook.get((plain(values.studbook), values.breed)) if values.studbook else None
        if dog is not None and not (values.chip and dog.chip == values.chip):
            yield warns("studbook-of-another-dog", field="studbook", name=dog.name)


def _differences(dog: KnownDog, values: Wanted) -> Iterator[Finding]:
    if values.sex and values.sex != dog.sex:
        yield refuses("sex-differs-from-record", field="sex", sex=dog.sex)
    if values.born and values.born != dog.born:
        yield refuses("born-differs-from-record", field="born", born=dog.born.isoformat())


def entered_already(dog: KnownDog, values: Wanted, classes_per_dog: int | None) -> Iterator[Finding]:
    """A dog stands once in a class, and in no more classes of a show than its rules allow."""
    is_full = classes_per_dog is not None and len(dog.entered) >= classes_per_dog
    if values.class_code in dog.entered or is_full:
        yield refuses("already-entered", field="name", classes=list(dog.entered))
