"""The tablet's script writes the same texts as Python, from the same phrase table."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from scoring.critique.doors import critique
from scoring.critique.table import compiled
from tests.critique import cases
from tests.critique.sheets import sheets

SCRIPT = Path(__file__).parents[2] / "static" / "ring" / "compose.js"
PAGE = "http://critique.invalid/"
WRITE_ALL = """async (asked) => {
  const { compose } = await import("/compose.js");
  return asked.map(([table, sheet]) => compose(table, sheet));
}"""

# pytest-base-url, which pytest-playwright brings, defines a session fixture in a way that this pytest warns of.
pytestmark = pytest.mark.filterwarnings("ignore::pytest.PytestRemovedIn10Warning")


@pytest.fixture
def twin(page):
    """Writes sheets with the script, in a page of nothing else."""
    text = SCRIPT.read_text(encoding="utf-8")
    page.route("**/*", lambda route: route.fulfill(body="<!doctype html>", content_type="text/html"))
    page.route("**/compose.js", lambda route: route.fulfill(body=text, content_type="text/javascript"))
    page.goto(PAGE)
    return lambda asked: page.evaluate(WRITE_ALL, asked)


@pytest.mark.browser
def test_the_script_writes_every_shared_case(twin):
    asked = [(case, language) for case in cases.read() for language in case["sentences"]]
    tables = [[compiled(case["sheet"]["standard"], language), case["sheet"]] for case, language in asked]
    for (case, language), found in zip(asked, twin(tables), strict=True):
        assert found["sentences"] == case["sentences"][language], (case["name"], language)
        assert found["spans"] == case["spans"], (case["name"], language)


@pytest.mark.browser
@settings(max_examples=20, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(asked=st.lists(sheets(most=40, praised=6), min_size=3, max_size=3))
def test_the_script_writes_any_sheet_as_python_does(twin, asked):
    tables = [[compiled(sheet["standard"], sheet["language"]), sheet] for sheet in asked]
    assert [found["text"] for found in twin(tables)] == [critique(sheet)["text"] for sheet in asked]


def test_the_shared_cases_are_what_python_writes():
    assert cases.read() == cases.made()


def test_the_script_is_short_and_imports_nothing():
    text = SCRIPT.read_text(encoding="utf-8")
    assert text.count("\n") < 200
    assert "\nimport " not in text
