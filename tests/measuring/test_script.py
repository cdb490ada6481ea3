"""The browser's twin of the arithmetic gives the shared cases' numbers."""

from pathlib import Path

import pytest

from tests.measuring import cases

SCRIPT = Path(__file__).parents[2] / "static" / "js" / "measuring.js"
PAGE = "http://measuring.invalid/"
MEASURE_ALL = """async (inputs) => {
  const { measure, roll } = await import("/measuring.js");
  return inputs.map((input) => {
    const photo = { ...input, clickSd: input.click_sd_px };
    return { measured: measure(photo), roll: roll(photo) };
  });
}"""


# pytest-base-url, which pytest-playwright brings, defines a session fixture in a way that this pytest warns of.
pytestmark = pytest.mark.filterwarnings("ignore::pytest.PytestRemovedIn10Warning")


@pytest.fixture
def twin(page):
    """Measures inputs with the script, in a page of nothing else."""
    text = SCRIPT.read_text(encoding="utf-8")
    page.route("**/*", lambda route: route.fulfill(body="<!doctype html>", content_type="text/html"))
    page.route("**/measuring.js", lambda route: route.fulfill(body=text, content_type="text/javascript"))
    page.goto(PAGE)
    return lambda inputs: page.evaluate(MEASURE_ALL, inputs)


@pytest.mark.browser
def test_the_script_gives_every_shared_case(twin):
    shared = cases.read()
    for case, found in zip(shared, twin([case["input"] for case in shared]), strict=True):
        expected = case["expected"]
        assert [row["code"] for row in found["measured"]] == list(expected), case["name"]
        for row in found["measured"]:
            pair = (None, None) if expected[row["code"]] is None else pytest.approx(expected[row["code"]], rel=1e-9)
            assert (row["value"], row["sd"]) == pair, (case["name"], row["code"])


@pytest.mark.browser
def test_the_script_finds_the_worked_examples_roll(twin):
    # sqrt(2) x 4 px over a ground line of 1900.27 px, in degrees
    photo = {"view": "front", "landmarks": {}, "click_sd_px": 4, "ground": [[300, 1412], [2200, 1380]]}
    (found,) = twin([photo])
    assert found["roll"] == {"value": pytest.approx(-0.964890, abs=6e-7), "sd": pytest.approx(0.170562, abs=6e-7)}


def test_the_script_is_short_and_imports_nothing():
    text = SCRIPT.read_text(encoding="utf-8")
    assert text.count("\n") < 300
    assert "\nimport " not in text
