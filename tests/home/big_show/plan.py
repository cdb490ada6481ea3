"""The invented show: breeds, judges, rings and days, the club's file of entries, and what the office should say of it.

Every person, kennel and dog is invented. A line that is not good says by which words the office must refuse it, and
what is typed to mend it; a line without a mend is set aside.
"""

import csv
import io
import random
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from itertools import count

from scoring.standards import loader as standards
from tests.home.big_show.bodies import Body
from tests.papers.programmes import name_of

HEADINGS = (
    "Name of dog", "Breed", "Variety", "Sex", "Date of birth", "Studbook no.", "Microchip", "Sire", "Dam", "Breeder",
    "Owner", "E-mail", "Class", "Titles", "Certificates", "Neutered",
)  # fmt: skip
FIELDS = (
    "name", "breed", "variety", "sex", "born", "studbook", "chip", "sire", "dam", "breeder", "owner", "email", "class",
    "titles", "certificates", "neutered",
)  # fmt: skip
MONTH = 30.44
# The most dogs one judge is given on a day, as an FCI show has it with a written critique (from memory).
MOST_A_DAY = 80
ONE_WRONG_OF = 17


@dataclass(frozen=True)
class Unit:
    """What competes for best of breed: a breed, or a variety of it."""

    breed: str
    name: str
    variety: str
    variety_name: str

    @property
    def title(self) -> str:
        return f"{self.name}, {self.variety_name}" if self.variety else self.name


@dataclass(frozen=True)
class Line:
    """One line of the file: `texts` by field; `wrong` is a part of the sentence that refuses it."""

    texts: Mapping[str, str]
    unit: Unit
    wrong: str = ""
    mend: Mapping[str, str] = field(default_factory=dict)
    is_left_out: bool = False

    @property
    def place(self) -> tuple[str, str, str]:
        """Breed, sex and class in which the dog stands in the end."""
        told = {**self.texts, **self.mend}
        return self.unit.title, {"male": "dog", "female": "bitch"}[told["sex"]], told["class"].replace(" ", "-")


@dataclass(frozen=True)
class Plan:
    body: Body
    first_day: date
    days: int
    units: Sequence[Unit]
    lines: Sequence[Line]
    late: Sequence[Line]

    @property
    def slug(self) -> str:
        return f"great-{self.body.code}-show"

    @property
    def name(self) -> str:
        return f"Great {self.body.code} show"

    @property
    def entered(self) -> list[Line]:
        return [line for line in (*self.lines, *self.late) if not line.is_left_out]


def plan(body: Body, dogs: int, first_day: date, days: int = 3) -> Plan:
    units = [
        Unit(one.code, one.name, variety.code if variety else "", variety.name if variety else "")
        for one in standards.all_standards()
        for variety in (one.varieties or (None,))
    ]
    units = units[: max(4, min(len(units), dogs // 12))]
    chance = random.Random(dogs)
    # No dog of one show is on record from another.
    numbers = count(1 if body.graded else 60_001)
    good = [_good(body, unit, chance, next(numbers), first_day) for unit in _spread(units, dogs)]
    lines = list(_spoilt(good, body, first_day))
    late = [_good(body, chance.choice(units), chance, next(numbers), first_day) for _ in range(max(4, dogs // 100))]
    # Every other late entry is refused.
    late = [replace(line, is_left_out=at % 2 == 1) for at, line in enumerate(late)]
    return Plan(body, first_day, days, units, lines, late)


def _spread(units: Sequence[Unit], dogs: int) -> Iterator[Unit]:
    """Whole breeds have twice as many dogs as varieties have."""
    wheel = [unit for unit in units for _ in range(1 if unit.variety else 2)]
    yield from (wheel[at % len(wheel)] for at in range(dogs))


def _good(body: Body, unit: Unit, chance: random.Random, number: int, first_day: date) -> Line:
    one = chance.choices(body.classes, [each.weight for each in body.classes])[0]
    owner = number // 3
    texts = {
        "name": f"{name_of(number)} of the Long Meadow",
        "breed": unit.name,
        "variety": unit.variety_name,
        "sex": chance.choice(("male", "female")),
        "born": _born(first_day, one.months),
        "studbook": f"LM {number:05}",
        "chip": f"2760981{number:08}",
        "sire": f"Sire {name_of(number + 1)}",
        "dam": f"Dam {name_of(number + 2)}",
        "breeder": f"Breeder {name_of(number // 9)}",
        "owner": f"Owner {name_of(owner)}",
        # A fifth of the owners gave no address.
        "email": f"owner{owner}@meadow.example" if owner % 5 else "",
        "class": one.code.replace("-", " "),
        "titles": one.titles,
        "certificates": one.certificates,
        "neutered": "no",
    }
    return Line(texts, unit)


def _born(first_day: date, months: int) -> str:
    return (first_day - timedelta(days=round(months * MONTH))).isoformat()


def _spoilt(good: Sequence[Line], body: Body, first_day: date) -> Iterator[Line]:
    """The good lines with some of them spoilt, one kind after the other, and some doubled."""
    for at, line in enumerate(good):
        kind = (at // ONE_WRONG_OF) % 8 if at % ONE_WRONG_OF == ONE_WRONG_OF - 1 else None
        yield line if kind is None else _wrong(line, kind, body, first_day)
        if kind == 0:
            yield replace(line, wrong="The same as line", is_left_out=True)


def _wrong(line: Line, kind: int, body: Body, first_day: date) -> Line:
    """Kind 0 stays good and is followed by its double."""
    old, right, young, right_too = body.moves
    months = body.class_of(right).months
    plain = {"titles": "", "certificates": ""}
    texts = dict(line.texts)
    match kind:
        case 1:
            texts |= {**plain, "class": old.replace("-", " "), "born": _born(first_day, months)}
            return replace(line, texts=texts, wrong="Too old for this class", mend={"class": right})
        case 2:
            texts |= {**plain, "class": young, "born": _born(first_day, body.class_of(right_too).months)}
            return replace(line, texts=texts, wrong="Too young for this class", mend={"class": right_too})
        case 3:
            chip = texts["chip"]
            return replace(line, texts={**texts, "chip": chip[:-2]}, wrong="instead of 15", mend={"chip": chip})
        case 4:
            breed = texts["breed"]
            return replace(line, texts={**texts, "breed": "Long Meadow Hound"}, wrong="breed", mend={"breed": breed})
        case 5:
            champion = body.class_of(body.champions)
            texts |= {**plain, "class": champion.code.replace("-", " "), "born": _born(first_day, champion.months)}
            return replace(line, texts=texts, wrong="asks for a confirmed title", mend={"titles": champion.titles})
        case 6:
            born = texts["born"]
            return replace(line, texts={**texts, "born": "31 February"}, wrong="date", mend={"born": born})
        case 7:
            return replace(line, texts={**texts, "owner": ""}, wrong="owner", mend={"owner": texts["owner"]})
    return line


def as_csv(lines: Sequence[Line]) -> bytes:
    target = io.StringIO()
    rows = [[line.texts[name] for name in FIELDS] for line in lines]
    csv.writer(target, delimiter=";").writerows([HEADINGS, *rows])
    return target.getvalue().encode("utf-8-sig")


def appointments(told: Plan) -> bytes:
    """Who judges what: whole breeds and parts of them, so that no judge has more dogs on a day than a judge can see."""
    rows: list[tuple[Unit, str, int]] = []
    judge, left = -1, 0
    for unit in told.units:
        for part, dogs in _parts(told, unit):
            if dogs > left:
                judge, left = judge + 1, MOST_A_DAY
            left -= dogs
            rows.append((unit, part, judge))
    rings = max(2, -(-(judge + 1) // told.days))
    target = io.StringIO()
    writer = csv.writer(target, delimiter=";")
    writer.writerow(("Breed", "Variety", "Part", "Judge", "Email", "Ring", "Day"))
    for unit, part, at in rows:
        # A ring has one judge a day; a judge comes for one day.
        day, ring = divmod(at, rings)
        on = (told.first_day + timedelta(days=day)).isoformat()
        judge_words = (f"Judge {name_of(at)}", f"judge{at}@meadow.example")
        writer.writerow((unit.name, unit.variety, part, *judge_words, f"{ring + 1:02}", on))
    return target.getvalue().encode()


def _parts(told: Plan, unit: Unit) -> Iterator[tuple[str, int]]:
    """The whole breed first; its bitches apart where it is large, and its largest classes where that is not enough."""
    mine = Counter((sex, code) for title, sex, code in (line.place for line in told.entered) if title == unit.title)
    if mine.total() <= MOST_A_DAY:
        yield "", mine.total()
        return
    apart = []
    for sex, words in (("dog", "dogs"), ("bitch", "bitches")):
        largest = iter(sorted((dogs, code) for (of, code), dogs in mine.items() if of == sex)[::-1])
        rest = sum(dogs for (of, _), dogs in mine.items() if of == sex)
        while rest > MOST_A_DAY:
            dogs, code = next(largest)
            apart.append((f"{words} {code}", dogs))
            rest -= dogs
        yield ("" if sex == "dog" else words), rest
    yield from apart
