"""The tablet's word on a rewritten text: silent while text and marks agree, naming the point where they do not."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from scoring.critique.table import compiled
from scoring.standards.loader import load
from tests.critique.sheets import sheets

SCRIPTS = Path(__file__).parents[2] / "static" / "ring"
PAGE = "http://critique.invalid/"
# What the book of the page knows of the sheet: when each field was written; here all at one time, but those given.
TELL = """async ([table, before, after, later]) => {
  const { disagreements } = await import("/agreeing.js");
  const { compose } = await import("/compose.js");
  const at = (field) => (later.includes(field) ? "2026-06-13T10:00:00Z" : "2026-06-13T09:00:00Z");
  const book = { edits: (sheet, field) => [{ made_at: at(field) }] };
  const text = compose(table, before).text;
  return disagreements(book, "entry:1", table, after, text, "text.en", (code) => `[${code}]`);
}"""

pytestmark = [
    pytest.mark.browser,
    pytest.mark.filterwarnings("ignore::pytest.PytestRemovedIn10Warning"),
]


@pytest.fixture
def told(page):
    page.route("**/*", lambda route: route.fulfill(body="<!doctype html>", content_type="text/html"))
    page.route("**/*.js", lambda route: route.fulfill(path=SCRIPTS / route.request.url.rpartition("/")[2]))
    page.goto(PAGE)
    return lambda *asked: page.evaluate(TELL, list(asked))


@settings(max_examples=40, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(sheet=sheets(most=25, praised=4))
def test_a_text_as_it_was_composed_agrees_with_its_marks(told, sheet):
    table = compiled(sheet["standard"], sheet["language"])
    assert told(table, sheet, sheet, []) == []


@settings(max_examples=40, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(sheet=sheets(most=25, praised=0), data=st.data())
def test_a_mark_changed_since_is_named(told, sheet, data):
    points = [point.code for point in load(sheet["standard"]).two_sided if point.code in sheet["marks"]]
    if not points:
        return
    point = data.draw(st.sampled_from(points))
    mark = data.draw(st.sampled_from([m for m in range(-3, 4) if m != sheet["marks"][point]]))
    after = {**sheet, "marks": {**sheet["marks"], point: mark}}
    table = compiled(sheet["standard"], sheet["language"])
    found = told(table, sheet, after, [f"mark.{point}"])
    assert len(found) == 1
    assert found[0].startswith(f"[{point}]")


def test_a_text_in_words_of_its_own_is_left_alone_until_a_mark_changes(page, told):
    table = compiled("hovawart", "en")
    tell = TELL.replace("compose(table, before).text", "'A bitch to remember.'")
    sheet = {"sex": "bitch", "marks": {"croup": 2, "topline": 0}}
    assert page.evaluate(tell, [table, sheet, sheet, []]) == []
    assert len(page.evaluate(tell, [table, sheet, sheet, ["mark.croup"]])) == 1


def test_a_place_that_changed_since_is_named(told):
    table = compiled("hovawart", "de")
    before = {"sex": "dog", "marks": {"croup": 0}, "place": 1}
    [found] = told(table, before, {**before, "place": 2}, [])
    assert found.startswith("place: ")
