"""The demo show: built by the same actions that a real show uses, from a scenario of our own."""

import csv
import io
import json
import tomllib
import uuid
from collections.abc import Iterator
from dataclasses import replace
from datetime import date, timedelta
from functools import cache
from itertools import cycle, islice
from pathlib import Path
from typing import Any

from django.db import transaction
from django.urls import reverse
from django.utils import timezone

from ringside.drawings.portrait import build_of
from ringside.drawings.snapshot import SIZE, snapshot
from ringside.entries import actions as entries
from ringside.entries.models import Entry
from ringside.entries.numbering import number_entries
from ringside.entries.proofs.actions import ask_terms
from ringside.home.demo_fees import charge, set_fees
from ringside.people.actions import person_for
from ringside.people.models import Account, Person
from ringside.photos.actions import keep_photo
from ringside.photos.marks import LANDMARKS
from ringside.photos.models import View
from ringside.photos.told import read_told
from ringside.results.actions import publish_class
from ringside.ring import actions as ring_actions
from ringside.ring.access import Worker
from ringside.shows.models import Ring, Role, Show, ShowBreed, ShowClass
from ringside.timetable.actions import plan_times
from ringside.timetable.planning import Hours, plan_of
from scoring.merging import covers_for
from scoring.standards import loader as standards

FACES = ("judge", "secretary", "exhibitor")
HEADINGS = (
    "Name of dog", "Call name", "Breed", "Sex", "Date of birth", "Studbook no.", "Microchip", "Sire", "Dam",
    "Breeder", "Owner", "E-mail", "Class", "Titles", "Certificates", "Neutered",
)  # fmt: skip
HELD = {"working": ("", "WCC"), "champion": ("national champion", "")}
# Which dog of the catalogue order belongs to the exhibitor of the demo: one that is judged, one to come.
EXHIBITORS_DOGS = {("hovawart", "male", "open", 0), ("bernese-mountain-dog", "female", "junior", 0)}


@cache
def scenario() -> dict[str, Any]:
    return tomllib.loads(Path(__file__).with_name("demo_show.toml").read_text(encoding="utf-8"))


def account_of(face: str) -> Account:
    return Account.objects.get(email=scenario()["people"][face]["email"])


def opening_page(face: str) -> str:
    show = Show.objects.get(slug=scenario()["show"]["slug"])
    if face == "judge":
        return reverse("ring:page", args=[show.rings.get(name="1").pk])
    return reverse("shows:show", args=[show.slug]) if face == "secretary" else reverse("home:mine")


@transaction.atomic
def build() -> bool:
    """Makes the demo show where it is not there yet; whether it did."""
    told = scenario()
    if Show.objects.filter(slug=told["show"]["slug"]).exists():
        return False
    people = {key: person_for(**one) for key, one in told["people"].items()}
    show = Show.objects.create(**told["show"])
    _give_roles(show, people)
    _make_rings(show, people)
    _take_entries(show, people["secretary"])
    for judged in told["judged"]:
        _judge_class(show, people, judged)
    _measure_photo(show, people["exhibitor"].account)
    charge(show, people, told["fees"])
    _open_next_show(people, timezone.localdate())
    return True


def _measure_photo(show: Show, owner: Account | None) -> None:
    """The exhibitor's judged dog, drawn by us and measured as any photo is; its croup as steep as the judge read it."""
    assert owner is not None
    entry = Entry.objects.get(show=show, dog__owners__account=owner, show_class__publication__isnull=False)
    taken = snapshot(replace(build_of(entry.dog.breed), croup_slope=38))
    told = {
        "view": View.STANDING_SIDE,
        "image": SIZE,
        "landmarks": {one.code: taken.landmarks[one.code] for one in LANDMARKS[View.STANDING_SIDE]},
        "ground": taken.ground,
        "taken_on": str(entry.show_class.show_breed.day),
    }
    keep_photo(
        by=owner, dog=entry.dog, public_id=uuid.uuid4(), told=read_told(json.dumps(told), entry.show.last_day),
        content=taken.jpeg,
    )  # fmt: skip


def _open_next_show(people: dict[str, Person], today: date) -> None:
    """A show that takes entries on the web, whatever the day on which the demo is made."""
    told = dict(scenario()["next_show"])
    days = {name: today + timedelta(days=told.pop(f"{name}_in")) for name in ("first_day", "entries_close")}
    groups, vaccination, fees = told.pop("groups"), told.pop("vaccination"), told.pop("fees")
    show = Show.objects.create(**told, **days, last_day=days["first_day"], entries_open=today)
    _give_roles(show, people)
    _make_rings(show, people, days["first_day"])
    ask_terms(who=people["secretary"].account, show=show, vaccination=vaccination, groups=groups)
    set_fees(show, people["secretary"].account, fees)


def _give_roles(show: Show, people: dict[str, Person]) -> None:
    kinds = {"secretary": Role.Kind.SECRETARY, "judge": Role.Kind.JUDGE, "second_judge": Role.Kind.JUDGE}
    for key, kind in kinds.items():
        Role.objects.create(show=show, account=people[key].account, kind=kind)


def _make_rings(show: Show, people: dict[str, Person], day: date | None = None) -> None:
    for told in scenario()["breeds"]:
        ring, _ = Ring.objects.get_or_create(show=show, name=told["ring"])
        judge = people[told["judge"]]
        ShowBreed.objects.create(show=show, breed=told["code"], judge=judge, ring=ring, day=day or told["day"])


def _take_entries(show: Show, secretary: Person) -> None:
    """The demo's dogs come in as a club's file, through the office's own import."""
    today = scenario()["show"]["entries_close"] - timedelta(days=3)
    content = entry_file().encode("utf-8-sig")
    file = entries.read_file(who=secretary.account, show=show, name="demo.csv", content=content, today=today)
    entries.take_lines(who=secretary.account, file=file, today=today)
    number_entries(who=secretary.account, show=show)
    told = scenario()["hours"]
    hours = Hours(start=f"{told['begins']:%H:%M}", per_dog=told["minutes_per_dog"], gap=0, step=5)
    plan_times(who=secretary.account, show=show, times=plan_of(show, hours, seconds=0).times)


def entry_file() -> str:
    target = io.StringIO()
    writer = csv.writer(target, delimiter=";")
    writer.writerow(HEADINGS)
    writer.writerows(_lines())
    return target.getvalue()


def _lines() -> Iterator[tuple[str, ...]]:
    names, people = scenario()["names"], scenario()["people"]
    given, kennels, owners = iter(names["given"]), cycle(names["kennels"]), cycle(names["owners"])
    for index, (breed, sex, code, rank, born) in enumerate(_places_to_fill()):
        kennel, owner = next(kennels), next(owners)
        is_exhibitors = (breed, sex, code, rank) in EXHIBITORS_DOGS
        name, address = (
            (people["exhibitor"]["name"], people["exhibitor"]["email"])
            if is_exhibitors
            else (owner, f"owner{names['owners'].index(owner) + 1}@alderwick.example")
        )
        call = next(given)
        titles, certificates = HELD.get(code, ("", ""))
        yield (
            f"{call} {kennel}", call, standards.load(breed).name, sex, born.strftime("%d.%m.%Y"),
            f"AW{index + 1:04}/{born:%y}", f"999{index + 1:012}", f"Sire {kennel}", f"Dam {kennel}", owner,
            name, address, code, titles, certificates, "no",
        )  # fmt: skip


def _places_to_fill() -> Iterator[tuple[str, str, str, int, date]]:
    told = scenario()
    for breed in told["breeds"]:
        for one in told["classes"]:
            for sex, count in (("male", one["dogs"]), ("female", one["bitches"])):
                for rank in range(count):
                    yield breed["code"], sex, one["code"], rank, one["born"] + timedelta(days=11 * rank)


def _judge_class(show: Show, people: dict[str, Person], judged: dict[str, Any]) -> None:
    show_class = ShowClass.objects.get(
        show_breed__show=show, show_breed__breed=judged["breed"], sex=judged["sex"], code=judged["class"]
    )
    shown = list(Entry.objects.filter(show_class=show_class).order_by("number"))
    # The judge's order is not the catalogue's.
    pairs = list(zip(islice(cycle(shown), 0, len(judged["sheets"])), judged["sheets"], strict=False))
    pen = Pen(show_class.show_breed, people["judge"].account)
    for entry, sheet in pairs:
        pen.write(f"entry:{entry.pk}", _sheet_fields(sheet))
    grades = {f"grade.{entry.pk}": sheet["grade"] for entry, sheet in pairs if sheet["grade"]}
    pen.write(f"class:{show_class.pk}", grades)
    if judged["signed"]:
        pen.write(f"class:{show_class.pk}", {"places": [str(entry.pk) for entry, _ in pairs]})
        for key in [f"class:{show_class.pk}", *(f"entry:{entry.pk}" for entry, _ in pairs)]:
            pen.sign(key)
        publish_class(by=people["secretary"].account, show_class=show_class)


def _sheet_fields(sheet: dict[str, Any]) -> dict[str, Any]:
    points = scenario()["sheet"]["points"]
    marks = [int(mark) for mark in sheet["marks"].split()]
    fields: dict[str, Any] = {f"mark.{point}": mark for point, mark in zip(points, marks, strict=False)}
    fields |= {f"praise.{point}": True for point in sheet["praise"]}
    fields |= {f"choice.{name}": sheet[name] for name in ("bite", "temperament") if sheet[name]}
    return fields | ({"remark": sheet["remark"]} if sheet["remark"] else {})


class Pen:
    """Writes edits as the judge's tablet would, one batch a call."""

    def __init__(self, breed: ShowBreed, account: Account | None) -> None:
        self.breed, self.account, self.written = breed, account, 0

    def write(self, sheet: str, fields: dict[str, Any]) -> None:
        edits = [self._edit(sheet, field, value) for field, value in fields.items()]
        assert self.breed.ring is not None
        worker = Worker(self.breed.ring, frozenset({Role.Kind.JUDGE}), self.account)
        answers = ring_actions.take_edits(worker=worker, raw_edits=edits)
        wrong = [answer for answer in answers if answer.state != "applied"]
        assert not wrong, wrong

    def sign(self, sheet: str) -> None:
        self.write(sheet, {"signature": {"covers": list(covers_for(ring_actions.edits_of(sheet)))}})

    def _edit(self, sheet: str, field: str, value: Any) -> dict[str, Any]:
        self.written += 1
        return {
            "v": 1,
            "id": f"demo-{sheet.replace(':', '-')}-{self.written}",
            "sheet": sheet,
            "field": field,
            "value": value,
            "replaces": [],
            "made_at": f"{self.breed.day}T09:{self.written // 60 % 60:02}:{self.written % 60:02}Z",
            "device": "demo-tablet",
        }
