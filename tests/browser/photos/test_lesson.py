"""How a dog is read: the drawing moves under the finger and the number is the core's."""

import pytest
from playwright.sync_api import expect

from ringside.photos.lesson import TURNS, turned
from scoring.measuring.doors import measure
from tests.browser.photos.hand import number
from tests.browser.test_accessibility import violations

pytestmark = pytest.mark.browser


def core(breed: str, point: str, frame: int) -> float:
    told = turned(breed, point)
    asked = {
        "view": "standing-side", "landmarks": told["landmarks"][frame], "ground": told["ground"], "click_sd_px": 1
    }  # fmt: skip
    return next(one["value"] for one in measure(asked)["measurements"] if one["code"] == TURNS[point].measurement)


@pytest.mark.parametrize("size", ["phone", "tablet", "desk"])
def test_dragging_the_croup_changes_number_words_and_drawing(sized, size):
    page = sized(size)
    page.goto("/")
    page.get_by_role("link", name="How a dog is read").click()
    page.get_by_role("link", name="German Shepherd Dog").click()
    page.locator("[data-point=croup]").click()
    expect(page.locator("#title")).to_have_text("Croup: slope of the croup")
    expect(page.locator("#said")).to_have_text("as asked")
    drawn = page.locator("#dog .ink").evaluate_all("(all) => all.map((each) => each.getAttribute('d')).join()")
    box = page.locator(".handle").bounding_box()
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x + 20, y + 60, steps=5)
    page.mouse.up()
    expect(page.locator("#said")).to_have_text("clearly steep")
    now = page.locator("#dog .ink").evaluate_all("(all) => all.map((each) => each.getAttribute('d')).join()")
    assert now != drawn
    page.locator("#back").click()
    expect(page.locator("#said")).to_have_text("as asked")
    assert violations(page) == []
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_the_page_shows_the_cores_number_at_both_ends_of_every_point(sized):
    page = sized("desk")
    page.goto("/how-a-dog-is-read/boxer/")
    for point in TURNS:
        page.locator(f"[data-point={point}]").click()
        expect(page.locator(f"[data-point={point}]")).to_have_attribute("aria-pressed", "true")
        ends = sorted(core("boxer", point, frame) for frame in (0, -1))
        page.locator(".handle").focus()
        for key, end in (("Home", ends[0]), ("End", ends[1])):
            page.keyboard.press(key)
            assert number(page.locator("#number").inner_text()) == pytest.approx(end, abs=0.06), (point, key)
