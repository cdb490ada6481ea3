"""What came out of the show, beside the recount: the files for other programs, and every paper read back."""

import csv
import io
import json
from collections import Counter
from collections.abc import Collection, Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path
from typing import Any

import icalendar
import openpyxl
from jsonschema import Draft202012Validator
from pypdf import PdfReader

from tests.home.big_show.judging import Judged
from tests.home.big_show.plan import Plan
from tests.home.big_show.recount import Breed, FinalsCount
from tests.papers.proof_papers import read_back

SEXES = {"dog": "dog", "bitch": "bitch", "male": "dog", "female": "bitch"}


def told_in(folder: Path, name: str) -> dict[str, Any]:
    """A JSON file of the folder, once it is what its published schema says."""
    told: dict[str, Any] = json.loads((folder / f"{name}.json").read_text(encoding="utf-8"))
    schema = json.loads((folder / f"{name}.schema.json").read_text(encoding="utf-8"))
    Draft202012Validator.check_schema(schema)
    Draft202012Validator(schema, format_checker=Draft202012Validator.FORMAT_CHECKER).validate(told)
    return told


def table_in(folder: Path, name: str) -> list[list[str]]:
    """A table of the folder, once CSV and Excel say the same and no cell of either starts a formula (OWASP's signs)."""
    text = (folder / f"{name}.csv").read_bytes().decode("utf-8-sig")
    rows = list(csv.reader(io.StringIO(text, newline=""), delimiter=";"))
    sheet = openpyxl.load_workbook(folder / f"{name}.xlsx", read_only=True).active
    assert sheet is not None
    cells = [["" if cell is None else str(cell) for cell in row] for row in sheet.iter_rows(values_only=True)]
    assert [row + [""] * (len(rows[0]) - len(row)) for row in cells] == rows
    assert not any(cell.startswith(tuple("=+-@\t\r")) for row in rows for cell in row)
    return rows


def entries(folder: Path, told: Plan) -> dict[str, int]:
    """Every planned dog is entered once in its class, numbers run from 1 without gaps; the number of each by name."""
    found = told_in(folder, "entries")["entries"]
    assert sorted(one["number"] for one in found) == list(range(1, len(found) + 1)), "numbers have gaps"
    varieties = {(unit.breed, unit.variety): unit.title for unit in told.units}
    planned = Counter((line.texts["name"], *line.place) for line in told.entered)
    entered = Counter(
        (one["dog"]["name"], varieties[one["breed"], one["variety"] or ""], SEXES[one["dog"]["sex"]], one["class"])
        for one in found
    )
    assert entered == planned
    assert len(table_in(folder, "entries")) == len(found) + 1
    _in_catalogue_order(found, told)
    return {one["dog"]["name"]: one["number"] for one in found}


def _in_catalogue_order(found: Sequence[Mapping[str, Any]], told: Plan) -> None:
    """The federation's regulations (Italian edition, p. 8): dogs apart from bitches. Here of one breed: dogs first."""
    in_time = len(told.entered) - sum(not line.is_left_out for line in told.late)
    for unit in told.units:
        of_breed = [
            (one["number"], one["dog"]["sex"])
            for one in found
            if (one["breed"], one["variety"] or "") == (unit.breed, unit.variety) and one["number"] <= in_time
        ]
        dogs, bitches = ([n for n, sex in of_breed if SEXES[sex] == each] for each in ("dog", "bitch"))
        assert max(dogs, default=0) < min(bitches, default=10**9)


def results(folder: Path, judged: Sequence[Judged]) -> None:
    """Presence, grade and place of every dog as its judge signed them; the table says the same as the JSON file."""
    found = told_in(folder, "results")["results"]
    seen = {
        one["number"]: (one["breed_name"], one["sex"], one["class"], one["presence"], one["grade"], one["place"])
        for one in found
    }
    decided = {
        number: (
            one.breed, one.sex, one.code, "absent" if number in one.absent else "present", one.grades.get(number),
            one.place_of(number),
        )
        for one in judged
        for number in one.numbers
    }  # fmt: skip
    assert seen == decided
    rows = table_in(folder, "results")
    at = [rows[0].index(name) for name in ("Number", "Place")]
    assert [[row[n] for n in at] for row in rows[1:]] == [[str(o["number"]), str(o["place"] or "")] for o in found]


def awards(folder: Path, breeds: Sequence[Breed], finals: FinalsCount) -> None:
    """Every award and final as decided, each once; what was not given is withheld or not there."""
    told = told_in(folder, "results")
    given = {
        (one["breed_name"], f"{one['award']}-{one['sex']}" if one["sex"] else one["award"]): one["number"]
        for one in told["awards"]
        if one["state"] == "given"
    }
    assert given == {(breed.title, code): number for breed in breeds for code, number in breed.awards.items()}
    placed = {(one["award"], one["group"] or "", one["place"]): one["number"] for one in told["finals"]}
    assert placed == {
        (*final, place): number for final, numbers in finals.places.items() for place, number in enumerate(numbers, 1)
    }
    assert len(table_in(folder, "awards")) == 1 + len(given) + len(placed)


def points(folder: Path, counted: Mapping[int, int]) -> None:
    assert {one["number"]: one["points"] for one in told_in(folder, "results")["points"]} == counted


def schedule(folder: Path, told: Plan) -> None:
    """A calendar program finds every breed, and in each ring the hours of the day one after the other."""
    calendar = icalendar.Calendar.from_ical((folder / "schedule.ics").read_bytes())
    lines = [str(event["DESCRIPTION"]).split("\n") for event in calendar.walk("VEVENT")]
    for of_ring in lines:
        hours = [line[:5] for line in of_ring]
        assert all(len(hour) == 5 and hour[2] == ":" for hour in hours), of_ring
        assert hours == sorted(hours)
    every = "\n".join(line for of_ring in lines for line in of_ring)
    assert all(unit.title in every for unit in told.units)


def papers(folder: Path, shown: Collection[int], present: Mapping[int, str]) -> str:
    """Every paper with every number on it; a critique for each dog that was there. How many pages, in words."""
    with ProcessPoolExecutor(2) as readers:
        reading = {file.stem: readers.submit(_read, file, shown, present) for file in sorted(folder.glob("*.pdf"))}
        return ", ".join(f"{name.replace('-', ' ')} {pages.result()}" for name, pages in reading.items())


def _read(file: Path, shown: Collection[int], present: Mapping[int, str]) -> int:
    if file.stem == "critiques":
        return _critiques(file, present)
    return _cards(file, shown) if file.stem == "number-cards" else read_back(file.stem, file.read_bytes(), shown)


def _cards(file: Path, shown: Collection[int]) -> int:
    pages = [page.extract_text().split() for page in PdfReader(file).pages]
    assert {word for page in pages for word in page} >= {str(number) for number in shown}
    return len(pages)


def _critiques(file: Path, present: Mapping[int, str]) -> int:
    """One page a dog at least, with its name, in the order of numbers."""
    pages = [" ".join(page.extract_text().split()) for page in PdfReader(file).pages]
    at = 0
    for number in sorted(present):
        name = " ".join(present[number].split())
        at = next((n for n in range(at, len(pages)) if name in pages[n]), -1)
        assert at >= 0, f"number {number} has no critique"
        at += 1
    return len(pages)
