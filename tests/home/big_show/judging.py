"""The rings of the long run: paired tablets at the ring's own door, what the judges decide on them, and signing."""

import random
import urllib.parse
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from scoring.merging import covers_for
from tests.home.big_show.bodies import Body
from tests.ring.tablets_over_http import Tablet

GRADES = {"adult": ("excellent", "very-good", "good"), "puppy": ("very-promising", "promising")}
AT_ONCE = 100


@dataclass
class Judged:
    """One class as its judge decided it: by catalogue number, who was there, the grades, the places from first on."""

    breed: str
    sex: str
    code: str
    numbers: Sequence[int]
    absent: set[int] = field(default_factory=set)
    grades: dict[int, str] = field(default_factory=dict)
    places: list[int] = field(default_factory=list)

    @property
    def present(self) -> list[int]:
        return [number for number in self.numbers if number not in self.absent]

    def place_of(self, number: int) -> int | None:
        return self.places.index(number) + 1 if number in self.places else None


@dataclass(frozen=True)
class BreedAtRing:
    """A breed whose awards are given in this ring: its sheet, and the codes on its card."""

    title: str
    sheet: str
    codes: Sequence[str]


class RingTablet(Tablet):
    """A tablet let in by the code that the office made for its ring."""

    def pair(self, code: str) -> None:
        self._ask("/ring/pair/")
        self._ask("/ring/pair/", data=urllib.parse.urlencode({"code": code}).encode())
        self.told = self.day()
        self.ids = {one["number"]: str(one["id"]) for each in self.told["classes"] for one in each["entries"]}
        for each in self.told["breeds"]:
            for other in each["elsewhere"]:
                self.ids |= {one["number"]: str(one["id"]) for one in other["entries"]}

    @property
    def judged_here(self) -> list[int]:
        return [one["number"] for each in self.told["classes"] for one in each["entries"]]

    def send_everything(self) -> None:
        while self.unsent:
            self._take(self._exchange(list(self.unsent.values())[:AT_ONCE]))
        assert not self.refused | self.left_out, "the ring did not take an edit"

    def sign(self, sheets: Sequence[str]) -> None:
        """Signs what is on the server of these sheets."""
        self.send_everything()
        of_sheet: dict[str, list[Any]] = {}
        for edit in self.known.values():
            of_sheet.setdefault(edit.sheet, []).append(edit)
        for sheet in sheets:
            self.set(sheet, "signature", {"covers": list(covers_for(of_sheet.get(sheet, [])))})
        self.send_everything()

    def judge_all(self, body: Body) -> Iterator[Judged]:
        """Judges and signs every class of the ring."""
        signed = []
        for one in self.told["classes"]:
            if one["entries"]:
                decided = decide(one, body)
                self._write(one, decided)
                signed += [
                    one["sheet"],
                    *(each["sheet"] for each in one["entries"] if each["number"] in decided.present),
                ]
                yield decided
        self.sign(signed)

    def _write(self, one: Mapping[str, Any], decided: Judged) -> None:
        card = one["sheet"]
        for number in decided.absent:
            self.set(card, f"presence.{self.ids[number]}", "absent")
        for number, grade in decided.grades.items():
            self.set(card, f"grade.{self.ids[number]}", grade)
            if grade == "disqualified":
                self.set(card, f"reason.{self.ids[number]}", "Snapped at the judge; told to see a vet.")
        self.set(card, "places", [self.ids[number] for number in decided.places])
        for each in one["entries"]:
            if each["number"] in decided.present:
                chance = random.Random(each["number"])
                self.set(each["sheet"], f"mark.{chance.choice(self._points(one['breed']))}", chance.randint(-2, 2))

    def _points(self, breed: str) -> list[str]:
        """The breed's points that take a mark."""
        points = self.told["standards"][breed]["points"]
        return [one["code"] for one in points if one["kind"] == "two-sided" and "sex" not in one]

    @property
    def breeds(self) -> list[BreedAtRing]:
        return [
            BreedAtRing(one["name"], one["sheet"], [award["code"] for award in one["awards"]])
            for one in self.told["breeds"]
        ]

    def give(self, sheet: str, awards: Mapping[str, int | bool]) -> None:
        for code, number in awards.items():
            self.set(sheet, f"award.{code}", False if number is False else self.ids[number])


def decide(one: Mapping[str, Any], body: Body) -> Judged:
    """What the judge of a class decides: a few absent, one of forty sent out, up to four placed among the good ones."""
    numbers = [each["number"] for each in one["entries"]]
    decided = Judged(one["breed_name"], one["sex"], one["code"], numbers)
    chance = random.Random(numbers[0])
    for number in numbers:
        if chance.random() < 0.04:
            decided.absent.add(number)
        elif body.graded:
            decided.grades[number] = _grade(one["code"], chance)
    best = GRADES["puppy" if "puppy" in one["code"] else "adult"]
    placeable = [number for number in decided.present if not body.graded or decided.grades[number] in best[:2]]
    chance.shuffle(placeable)
    # A better grade never stands behind a worse one.
    placeable.sort(key=lambda number: best.index(decided.grades[number]) if body.graded else 0)
    decided.places = placeable[:4]
    return decided


def _grade(code: str, chance: random.Random) -> str:
    if chance.random() < 0.025:
        return "disqualified"
    return chance.choice(GRADES["puppy" if "puppy" in code else "adult"])
