"""Every face can be used by everybody: no violation that axe knows, and targets large enough for a thumb."""

import pytest
from axe_playwright_python.sync_playwright import Axe
from django.urls import Resolver404, resolve
from playwright.sync_api import Error, expect

from tests.browser.test_journeys import enter

pytestmark = pytest.mark.browser

# Targets of the ring page: 48 px, 56 for grades; 8 px between two. Source: this project's own design notes.
SMALL_TARGETS = """() => [...document.querySelectorAll("button, summary, input, textarea, label.grade")]
  .filter((e) => e.offsetParent !== null && !e.closest("label.grade input"))
  .map((e) => [e, e.getBoundingClientRect()])
  .filter(([e, box]) => box.width && (box.height < 47.5 || box.width < 47.5))
  .filter(([e]) => !(e.matches("input") && e.closest("label.grade")))
  .map(([e, box]) => `${e.className || e.tagName} ${e.textContent.trim().slice(0, 30)} ${box.width}x${box.height}`)"""


# Pages of this site that a page leads to, without its files.
LEADS_TO = """() => [...document.querySelectorAll("a[href]:not([download])")]
  .filter((e) => e.origin === location.origin).map((e) => e.pathname)"""


def violations(page) -> list[str]:
    found = Axe().run(page).response["violations"]
    return [f"{one['id']}: {node['target']} {node['failureSummary']}" for one in found for node in one["nodes"]]


@pytest.mark.parametrize("size", ["tablet", "landscape", "phone"])
def test_the_ring_page_has_no_violation_and_no_small_target(sized, fresh_site, size):
    page = sized(size, fresh_site.address)
    enter(page, "judge")
    expect(page.locator(".programme .class").first).to_be_visible()
    assert violations(page) == []
    page.locator(".programme .class", has_text="Bernese Mountain Dog, bitches, open class").click()
    expect(page.locator(".sheet")).to_be_visible()
    if size == "phone":
        page.locator(".jump", has_text="head").click()
    page.locator("#point-stop .stop").nth(5).click()
    page.locator("#point-stop .praise").click()
    page.locator(".teeth summary").click()
    page.locator("#point-stop .asks summary").click()
    assert violations(page) == []
    assert page.evaluate(SMALL_TARGETS) == []
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    if size == "phone":
        page.locator(".grading summary").click()
    page.locator(".grade", has_text="Disqualified").click()
    expect(page.locator(".caution")).to_be_visible()
    assert violations(page) == []
    page.get_by_role("button", name="Line-up").click()
    page.locator(".lineup .tile:enabled").first.click()
    expect(page.locator(".order .place")).to_have_count(1)
    assert violations(page) == []
    assert page.evaluate(SMALL_TARGETS) == []


@pytest.mark.parametrize(
    "address", ["/office/", "/office/alderwick/", "/office/alderwick/details/", "/office/alderwick/entries/",
                "/office/alderwick/entries/new/", "/office/alderwick/results/", "/office/alderwick/rings/",
                "/office/alderwick/times/", "/office/alderwick/times/days/"],
)  # fmt: skip
def test_the_office_has_no_violation(sized, address):
    page = sized("desk")
    enter(page, "secretary")
    page.goto(address)
    assert violations(page) == []


@pytest.mark.parametrize("address", ["/ring/pair/", "/ring/1/board/"])
@pytest.mark.parametrize("size", ["tablet", "desk", "phone"])
def test_the_pairing_page_and_the_board_have_no_violation_and_fit(sized, size, address):
    page = sized(size)
    page.goto(address)
    assert violations(page) == []
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


@pytest.mark.parametrize("address", ["/", "/sign-in/", "/my-dogs/"])
def test_the_exhibitors_pages_have_no_violation(sized, address):
    page = sized("phone")
    enter(page, "exhibitor")
    page.goto(address)
    assert violations(page) == []
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_the_critique_has_no_violation(sized):
    page = sized("phone")
    enter(page, "exhibitor")
    page.get_by_text("Read the critique").tap()
    expect(page.locator(".drawing svg")).to_be_visible()
    assert violations(page) == []
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_the_keyboard_alone_sets_marks_and_grade(sized):
    page = sized("desk")
    enter(page, "judge")
    page.locator(".programme .class", has_text="Bernese Mountain Dog, dogs, champion class").press("Enter")
    page.locator("#point-substance .stop").nth(3).press("Enter")
    expect(page.locator("#point-substance .stop").nth(3)).to_have_attribute("aria-pressed", "true")
    page.locator(".grade input").first.press("Space")
    expect(page.locator(".tile .state").first).to_have_text("graded")


def name_of(path: str) -> str:
    try:
        return resolve(path).view_name
    except Resolver404:
        return ""


# German has the longest words. How many kinds of page the demo show leads to, at least, so that none is lost unseen.
@pytest.mark.parametrize(
    ("face", "start", "rooms", "least"),
    [("secretary", "/office/alderwick/", ("/office/", "/papers/"), 40), ("exhibitor", "/my-dogs/", ("/",), 15)],
)
def test_no_page_of_office_and_exhibitor_scrolls_sideways_on_a_phone(sized, face, start, rooms, least):
    page = sized("phone", locale="de-DE")
    enter(page, face)
    tried, seen, wide, waiting = {""}, 0, [], [start]
    while waiting:
        path = waiting.pop(0)
        if (name := name_of(path)) in tried or name.startswith("ring:") or not path.startswith(rooms):
            continue
        tried.add(name)
        try:
            page.goto(path)
        except Error as reason:
            if "Download is starting" not in str(reason):
                raise
            continue
        seen += 1
        if not page.evaluate("document.documentElement.scrollWidth <= document.documentElement.clientWidth"):
            wide.append(path)
        waiting += page.evaluate(LEADS_TO)
    assert wide == []
    assert seen >= least
