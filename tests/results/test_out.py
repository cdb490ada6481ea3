"""What goes out: tables no cell of which starts a formula, JSON as its schema says, a calendar as RFC 5545 asks."""

import csv
import io
from datetime import UTC, datetime

import pytest
from django.test import Client
from hypothesis import given
from hypothesis import strategies as st
from jsonschema import Draft202012Validator
from openpyxl import load_workbook

from ringside.core.calendar_file import escaped, folded
from ringside.results import out
from ringside.results.actions import publish_class
from ringside.results.schedule import schedule_of
from tests.results.structure import problems
from tests.results.writing import judge_and_sign
from tests.shows_for_tests import small_show

FORMULA = '=HYPERLINK("http://evil.example";"x")'


@pytest.fixture
def at(db):
    found = small_show()
    dog = found.entries[0].dog
    dog.name = FORMULA
    dog.save()
    judge_and_sign(found)
    publish_class(by=found.accounts["secretary"], show_class=found.show_class)
    return found


@pytest.fixture
def office(at) -> Client:
    client = Client()
    client.force_login(at.accounts["secretary"])
    return client


@pytest.mark.both_databases
def test_results_as_csv_hold_every_published_dog_and_no_formula(office):
    content = office.get("/office/small/results/out/results.csv").content
    rows = list(csv.DictReader(io.StringIO(content.decode("utf-8-sig")), delimiter=";"))
    assert [(row["Number"], row["Grade"], row["Place"]) for row in rows] == [
        ("1", "Excellent", "1"), ("2", "Very Good", "2"), ("3", "Good", ""),
    ]  # fmt: skip
    assert not any(cell.startswith(("=", "+", "-", "@")) for row in rows for cell in row.values())
    assert rows[0]["Name of dog"].endswith(FORMULA)


@pytest.mark.both_databases
def test_results_as_a_workbook_hold_text_only(office):
    content = office.get("/office/small/results/out/results.xlsx").content
    sheet = load_workbook(io.BytesIO(content)).active
    assert [cell.value for cell in sheet[1]] == list(out.HEADINGS)
    assert {cell.data_type for row in sheet.iter_rows() for cell in row} <= {"s", "n", "inlineStr"}
    assert sheet.max_row == 4


@pytest.mark.both_databases
@pytest.mark.parametrize("name", ["results", "entries"])
def test_json_is_as_its_schema_says(office, name):
    schema = office.get(f"/office/small/results/out/{name}.schema.json").json()
    told = office.get(f"/office/small/results/out/{name}.json").json()
    assert problems(told, schema) == []
    # JSON Schema 2020-12, by the reference library: the schema is one, and the file is as it says.
    Draft202012Validator.check_schema(schema)
    Draft202012Validator(schema, format_checker=Draft202012Validator.FORMAT_CHECKER).validate(told)
    assert len(told[name]) == {"results": 3, "entries": 4}[name]


@pytest.mark.both_databases
def test_what_is_not_published_does_not_go_out(at, office):
    told = office.get("/office/small/results/out/results.json").json()
    assert {one["breed"] for one in told["results"]} == {"boxer"}


def test_the_structural_check_itself_finds_what_is_wrong():
    schema = out.schema("results")
    sound = {"format": "ringside-results", "version": 2, "results": [], "awards": [], "finals": [], "points": [],
             "award_corrections": [],
             "show": {"name": "", "place": "", "rules": "fci", "overlays": [], "first_day": "2026-06-13",
                      "last_day": "2026-06-13"}}  # fmt: skip
    assert problems(sound, schema) == []
    assert problems({**sound, "version": 1}, schema)
    assert problems({**sound, "more": 1}, schema)
    assert problems({**sound, "results": [{}]}, schema)
    assert problems({name: value for name, value in sound.items() if name != "show"}, schema)


def unfolded(content: bytes) -> list[str]:
    """RFC 5545, section 3.1: a line break followed by a blank is no line break."""
    assert b"\n" not in content.replace(b"\r\n", b"")
    return content.decode().replace("\r\n ", "").split("\r\n")[:-1]


@pytest.mark.both_databases
def test_the_schedule_has_an_event_for_each_ring_and_day_as_the_standard_asks(at):
    content = schedule_of(at.show, datetime(2026, 5, 1, 12, tzinfo=UTC))
    lines = unfolded(content)
    assert all(len(line) <= 75 for line in content.split(b"\r\n"))
    assert (lines[0], lines[-1]) == ("BEGIN:VCALENDAR", "END:VCALENDAR")
    assert lines.count("BEGIN:VEVENT") == lines.count("END:VEVENT") == 2
    for name in ("UID:", "DTSTAMP:20260501T120000Z", "DTSTART;VALUE=DATE:20260613", "DTEND;VALUE=DATE:20260614"):
        assert sum(line.startswith(name) for line in lines) == 2
    assert len({line for line in lines if line.startswith("UID:")}) == 2
    assert "SUMMARY:Small Show\\, Ring 1" in lines
    assert "DESCRIPTION:Boxer: judge" in lines


@given(st.text(st.characters(exclude_categories=("Cs", "Cc"))))
def test_a_line_is_folded_without_cutting_a_letter_and_unfolds_to_itself(text):
    parts = folded(text).encode().split(b"\r\n")[:-1]
    assert all(len(part) <= 75 for part in parts)
    assert "".join(part.decode()[1 if at else 0 :] for at, part in enumerate(parts)) == text


def test_text_is_escaped_as_the_standard_says():
    """RFC 5545, section 3.3.11: backslash, semicolon, comma and line break are escaped."""
    assert escaped("a\\b;c,d\ne\r\nf") == "a\\\\b\\;c\\,d\\ne\\nf"
