"""The recount: from the judges' decisions alone to awards, finals and points. Nothing of the project is asked here.

Sources are named at `bodies` and, where a figure stands here, beside it.
"""

import random
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from tests.home.big_show.bodies import Body
from tests.home.big_show.judging import Judged

Awards = dict[str, int]
SEXES = ("dog", "bitch")
CACIB_CLASSES = ("intermediate", "open", "working", "champion")
WINNERS_CLASSES = (
    "junior-puppy", "senior-puppy", "twelve-to-eighteen-months", "canadian-bred", "bred-by-exhibitor", "open",
)  # fmt: skip


@dataclass
class Breed:
    """One breed's classes, and the awards its judge gives; `without_right` are those given against the rules."""

    title: str
    group: str
    classes: list[Judged]
    awards: Awards = field(default_factory=dict)
    without_right: dict[str, int] = field(default_factory=dict)

    def firsts(self, sex: str, codes: Sequence[str], grade: str = "") -> list[int]:
        """The firsts of these classes, those with the grade where one is asked."""
        found = [one for one in self.classes if one.sex == sex and one.code in codes and one.places]
        return [one.places[0] for one in found if not grade or one.grades[one.places[0]] == grade]

    def second_to(self, winner: int, grade: str = "") -> list[int]:
        """The second of the class that the winner won."""
        of = next(one for one in self.classes if winner in one.numbers)
        seconds = of.places[1:2] if of.places[:1] == [winner] else []
        return [number for number in seconds if not grade or of.grades[number] == grade]

    def sex_of(self, number: int) -> str:
        return next(one.sex for one in self.classes if number in one.numbers)


def breed_awards(body: Body, breed: Breed) -> None:
    """What the judge of the breed gives, each to a dog that the rules let compete for it."""
    chance = random.Random(breed.classes[0].numbers[0])
    (_fci if body.code == "fci" else _canadian)(breed, chance)


def _fci(breed: Breed, chance: random.Random) -> None:
    given = breed.awards
    for sex in SEXES:
        excellent = breed.firsts(sex, CACIB_CLASSES, "excellent")
        # A certificate is never automatic: one judge of ten withholds it.
        if excellent and chance.random() > 0.1:
            winner = given[f"cacib-{sex}"] = chance.choice(excellent)
            others = [one for one in excellent if one != winner] + breed.second_to(winner, "excellent")
            _pick(given, f"reserve-cacib-{sex}", others, chance)
        _pick(given, f"cacib-j-{sex}", breed.firsts(sex, ["junior"], "excellent"), chance)
        _pick(given, f"cacib-v-{sex}", breed.firsts(sex, ["veteran"], "excellent"), chance)
        winners = [given[code] for code in (f"cacib-{sex}", f"cacib-j-{sex}", f"cacib-v-{sex}") if code in given]
        _pick(given, f"best-of-sex-{sex}", winners, chance)
    _best_and_opposite(given, [given[f"best-of-sex-{sex}"] for sex in SEXES if f"best-of-sex-{sex}" in given], chance)
    for award, code, grade in (
        ("best-minor-puppy", "minor-puppy", "very-promising"), ("best-puppy", "puppy", "very-promising"),
        ("best-junior", "junior", "excellent"), ("best-veteran", "veteran", "excellent"),
    ):  # fmt: skip
        _pick(given, award, [one for sex in SEXES for one in breed.firsts(sex, [code], grade)], chance)


def _canadian(breed: Breed, chance: random.Random) -> None:
    given = breed.awards
    rivals: dict[str, list[int]] = {}
    for sex in SEXES:
        firsts = breed.firsts(sex, WINNERS_CLASSES)
        _pick(given, f"winners-{sex}", firsts, chance)
        winner = given.get(f"winners-{sex}")
        if winner:
            others = [one for one in firsts if one != winner] + breed.second_to(winner)
            _pick(given, f"reserve-winners-{sex}", others, chance)
        champions = [n for one in breed.classes if (one.sex, one.code) == (sex, "specials-only") for n in one.present]
        rivals[sex] = [*([winner] if winner else []), *champions, *breed.firsts(sex, ["veteran"])]
    winners = [given[f"winners-{sex}"] for sex in SEXES if f"winners-{sex}" in given]
    _pick(given, "best-of-winners", winners, chance)
    _pick(given, "best-of-breed", [*rivals["dog"], *rivals["bitch"]], chance)
    best = given.get("best-of-breed")
    if best:
        _pick(given, "best-opposite-sex", rivals["bitch" if breed.sex_of(best) == "dog" else "dog"], chance)
    for award, codes in (
        ("best-baby-puppy", ["baby-puppy"]), ("best-puppy", ["junior-puppy", "senior-puppy"]),
        ("best-veteran", ["veteran"]),
    ):  # fmt: skip
        _pick(given, award, [one for sex in SEXES for one in breed.firsts(sex, codes)], chance)


def _best_and_opposite(given: Awards, best_of_sex: Sequence[int], chance: random.Random) -> None:
    if best_of_sex:
        best = given["best-of-breed"] = chance.choice(best_of_sex)
        others = [one for one in best_of_sex if one != best]
        given |= {"best-opposite-sex": others[0]} if others else {}


def _pick(given: Awards, code: str, competing: Sequence[int], chance: random.Random) -> None:
    if competing:
        given[code] = chance.choice(competing)


def one_without_right(breeds: Iterable[Breed], award: str, code: str) -> None:
    """One judge gives an award to the second of a class: the judge's word stands, and the desk must say so."""
    for breed in breeds:
        seconds = [one.places[1] for one in breed.classes if one.code == code and len(one.places) > 1]
        if seconds:
            breed.awards[award] = breed.without_right[award] = seconds[0]
            return
    raise AssertionError(f"no breed has two {code} dogs placed")


Final = tuple[str, str]


@dataclass
class FinalsCount:
    """By final (award and group, empty for the show's): who competes, and whom its judge places."""

    competing: dict[Final, set[int]]
    places: dict[Final, list[int]]


def finals(body: Body, breeds: Sequence[Breed]) -> FinalsCount:
    """Every final that these breeds lead to, groups first; a group's first goes on to the show."""
    chance = random.Random(len(breeds))
    groups = sorted({breed.group for breed in breeds}, key=int)
    found = FinalsCount({}, {})
    for award, (level, source) in body.finals.items():
        for group in groups if level == "group" else [""]:
            competing = _competing(body, breeds, found, source, group)
            if award == "reserve-best-in-show":
                # The best in show is not its own reserve.
                competing = [one for one in competing if one not in found.places["best-in-show", ""]]
            placed = list(competing)
            chance.shuffle(placed)
            found.competing[award, group] = set(competing)
            found.places[award, group] = placed[: body.places_in_finals(award)]
    return found


def _competing(body: Body, breeds: Sequence[Breed], found: FinalsCount, source: str, group: str) -> list[int]:
    if source in body.finals:
        return sorted(places[0] for (award, _), places in found.places.items() if award == source and places)
    return sorted(one.awards[source] for one in breeds if source in one.awards and group in ("", one.group))


# Canadian Kennel Club, championship section (copy read), and a breeder's worked explanation: dogs to points.
STEPS = ((13, 5), (10, 4), (6, 3), (3, 2), (2, 1), (1, 0))
# The same section: points of the first four in a group by the breeds competing in it.
GROUP_STEPS = (
    (13, (5, 4, 3, 2)), (10, (4, 3, 2, 1)), (6, (3, 2, 1, 1)), (5, (2, 1, 1, 1)), (4, (2, 1, 1, 0)), (3, (2, 1, 0, 0)),
    (2, (1, 0, 0, 0)), (1, (0, 0, 0, 0)),
)  # fmt: skip
MOST_POINTS = 5


def points(breeds: Sequence[Breed], decided: FinalsCount) -> dict[int, int]:
    """The points of every dog with a win that counts; a champion shown as such earns none."""
    found: dict[int, int] = {}
    for breed in breeds:
        counts = {sex: (_there(breed, sex, WINNERS_CLASSES), _champions(breed, sex)) for sex in SEXES}
        champions = {n for one in breed.classes if one.code == "specials-only" for n in one.numbers}
        won: dict[int, list[int]] = {}
        for award, number in breed.awards.items():
            competing = _counted(award, breed.sex_of(number), counts)
            if competing is not None:
                won.setdefault(number, []).append(_step(competing))
        for number, earned in won.items():
            if number not in champions:
                found[number] = _with_finals(number, max(earned), breed, breeds, decided)
    return found


def _with_finals(number: int, earned: int, breed: Breed, breeds: Sequence[Breed], decided: FinalsCount) -> int:
    if decided.places["best-in-show", ""] == [number]:
        return MOST_POINTS
    placed = decided.places["best-in-group", breed.group]
    if number in placed and breed.awards.get("best-of-breed") == number:
        shown = sum(1 for one in breeds if one.group == breed.group and _any_there(one))
        row = next(row for least, row in GROUP_STEPS if shown >= least)
        earned += row[placed.index(number)]
    return min(earned, MOST_POINTS)


def _counted(award: str, sex: str, counts: Mapping[str, tuple[int, int]]) -> int | None:
    both = counts["dog"][0] + counts["bitch"][0]
    if award.startswith("winners-"):
        return counts[sex][0]
    if award == "best-of-winners":
        return both
    if award == "best-of-breed":
        return both + counts["dog"][1] + counts["bitch"][1]
    return sum(counts[sex]) if award == "best-opposite-sex" else None


def _there(breed: Breed, sex: str, codes: Sequence[str]) -> int:
    return sum(len(one.present) for one in breed.classes if one.sex == sex and one.code in codes)


def _champions(breed: Breed, sex: str) -> int:
    """Veterans compete with the champions: from memory, as the rule book has it."""
    return _there(breed, sex, ("specials-only", "veteran"))


def _any_there(breed: Breed) -> bool:
    return any(_there(breed, sex, WINNERS_CLASSES) or _champions(breed, sex) for sex in SEXES)


def _step(dogs: int) -> int:
    return next(given for least, given in STEPS if dogs >= least)
