"""What a thumb needs: few taps, targets apart from each other, nothing that moves under it, ink to read in sun."""

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, expect

from tests.browser.test_journeys import MARKS, Finger

pytestmark = pytest.mark.browser

SIZES = ["tablet", "landscape", "phone"]

# The gap of 8 px between two targets. Source: this project's own design notes.
TOO_CLOSE = """() => {
  const shown = [...document.querySelectorAll("button, summary, textarea, select, label.grade, input.number")]
    .filter((e) => e.checkVisibility({ visibilityProperty: true }) && !e.closest("header.line"));
  const boxes = shown.map((e) => [e, e.getBoundingClientRect()]);
  const apart = (a, b) => Math.max(a.left - b.right, b.left - a.right, a.top - b.bottom, b.top - a.bottom);
  const layer = (e) => e.closest(".foot") ?? document.body;
  return boxes.flatMap(([one, a], index) => boxes.slice(index + 1)
    .filter(([other, b]) => layer(one) === layer(other) && apart(a, b) < 7.5)
    .map(([other, b]) => `${one.textContent.slice(0, 25)} | ${other.textContent.slice(0, 25)}: ${apart(a, b)}`));
}"""


def tap_eighteen_marks_bite_and_grade(page: Page) -> int:
    """As a thumb does it that only touches what it sees; folding and opening count too."""
    finger = Finger()
    rows = page.locator(".row:has(.stops)")
    for index, mark in enumerate(MARKS):
        stop = rows.nth(index).locator(".stop").nth(mark + 3)
        expect(stop).to_be_visible()
        finger.tap(stop)
        expect(stop).to_have_attribute("aria-pressed", "true")
    bite = page.locator("#point-bite .option", has_text="scissor")
    if not bite.is_visible():
        finger.tap(page.locator("#section-head > summary"))
    finger.tap(bite)
    if not page.locator(".grades").is_visible():
        finger.tap(page.locator(".grading summary"))
    finger.tap(page.locator(".grade").first)
    expect(page.locator(".tile .state").first).to_have_text("graded")
    return finger.taps


@pytest.mark.parametrize("size", SIZES)
def test_a_sheet_of_eighteen_marks_bite_and_grade_takes_25_taps_at_most(in_class, size):
    page = in_class(size, {"tablet": "Hovawart, dogs, junior", "landscape": "Hovawart, bitches, junior"}.get(
        size, "Hovawart, dogs, puppy"))  # fmt: skip
    assert tap_eighteen_marks_bite_and_grade(page) <= 25


@pytest.mark.parametrize("size", SIZES)
def test_two_targets_stand_eight_pixels_apart(in_class, size):
    page = in_class(size, "Bernese Mountain Dog, bitches, intermediate")
    if size == "phone":
        page.locator(".jump", has_text="head").tap()
        page.locator(".grading summary").tap()
    page.locator(".teeth summary").tap()
    assert page.evaluate(TOO_CLOSE) == []
    page.get_by_role("button", name="Line-up").tap()
    page.locator(".lineup .tile").first.tap()
    expect(page.locator(".order .place")).to_have_count(1)
    assert page.evaluate(TOO_CLOSE) == []
    page.get_by_role("button", name="Undo the places").tap()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_all_text_has_a_contrast_of_seven_to_one(in_class, scheme):
    page = in_class("tablet", "Hovawart, bitches, veteran")
    page.emulate_media(color_scheme=scheme)
    page.locator("#point-stop .stop").nth(5).tap()
    page.locator(".grade").first.tap()
    # Success criterion 1.4.6 of the Web Content Accessibility Guidelines 2.2, level AAA.
    only = {"runOnly": {"type": "rule", "values": ["color-contrast-enhanced"]}}
    for name in ("Line-up", "Classes"):
        found = Axe().run(page, options=only).response["violations"]
        assert [node["html"] for one in found for node in one["nodes"]] == []
        page.get_by_role("button", name=name).tap()
        expect(page.locator(".sheet")).to_have_count(0)


def test_choosing_an_answer_moves_nothing(in_class):
    page = in_class("tablet", "Bernese Mountain Dog, bitches, junior")
    boxes = """() => [...document.querySelectorAll(".row .option, .stop, .grade")]
      .filter((e) => e.checkVisibility()).map((e) => [e.textContent, e.offsetLeft, e.offsetTop, e.offsetWidth])"""
    before = page.evaluate(boxes)
    for tapped in ("#point-bite .option", "#point-temperament .option"):
        page.locator(tapped).first.evaluate("(button) => button.click()")
        expect(page.locator(tapped).first).to_have_attribute("aria-pressed", "true")
    assert page.evaluate(boxes) == before
