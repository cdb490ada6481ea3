"""Every state that the ring page can be in: no violation, seven to one, 48 px, nothing wider than the screen."""

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, expect

from tests.browser.ring_page.test_full_storage import FULL
from tests.browser.test_accessibility import SMALL_TARGETS
from tests.browser.test_awards import award
from tests.browser.test_journeys import enter

pytestmark = pytest.mark.browser

SIGNED, OPEN = "Hovawart, dogs, open class", "Bernese Mountain Dog, bitches, open class"
# Success criterion 1.4.6 of the Web Content Accessibility Guidelines 2.2, level AAA, beside axe's own A and AA.
STRICT = {"rules": {"color-contrast-enhanced": {"enabled": True}}}


def can_be_used(page: Page, state: str) -> None:
    found = Axe().run(page, options=STRICT).response["violations"]
    assert [(state, one["id"], node["html"]) for one in found for node in one["nodes"]] == []
    assert (state, page.evaluate(SMALL_TARGETS)) == (state, [])
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), state


def open_class(page: Page, name: str) -> None:
    page.locator(".programme .class", has_text=name).tap()
    expect(page.locator(".sheet")).to_be_visible()


def to_classes(page: Page) -> None:
    page.get_by_role("button", name="Classes").tap()
    expect(page.locator(".programme")).to_be_visible()


SIZES = [("tablet", "light"), ("landscape", "dark"), ("phone", "light")]


@pytest.fixture(params=SIZES, ids=["-".join(one) for one in SIZES])
def page(request, sized, fresh_site) -> Page:
    size, scheme = request.param
    page = sized(size, fresh_site.address)
    page.emulate_media(color_scheme=scheme)
    enter(page, "judge")
    expect(page.locator("#status")).to_have_text("Everything is on the server")
    return page


def test_a_signed_class_and_what_waits_after_it_can_be_used(page):
    can_be_used(page, "classes of the day")
    open_class(page, SIGNED)
    if page.viewport_size["width"] < 700:
        page.locator(".jump", has_text="head").tap()
    page.locator("#point-stop .stop").nth(6).tap()
    expect(page.locator("#point-stop .stop").nth(6)).to_have_attribute("data-waits", "to-count")
    can_be_used(page, "a change that waits")
    page.get_by_role("button", name="Line-up").tap()
    expect(page.locator(".order .place").first).to_be_visible()
    can_be_used(page, "signed line-up")
    page.get_by_role("button", name="Read").first.tap()
    expect(page.locator("h2").first).to_be_focused()
    can_be_used(page, "critiques to read through")
    to_classes(page)
    page.locator(".programme .class", has_text="Hovawart: awards").tap()
    award(page, "CACIB, dogs").locator(".tile").first.tap()
    page.get_by_role("button", name="Sign the awards").tap()
    expect(page.locator(".signing")).to_contain_text("Awards signed")
    can_be_used(page, "signed awards")


def test_a_page_without_network_that_disagrees_with_another_can_be_used(page, browser, fresh_site):
    other = browser.new_context(base_url=fresh_site.address, has_touch=True).new_page()
    enter(other, "judge")
    for each in (page, other):
        open_class(each, OPEN)
        each.context.set_offline(True)
    for each, grade in ((page, "Excellent"), (other, "Very Good")):
        if each.viewport_size["width"] < 700:
            each.locator(".grading summary").tap()
        each.get_by_role("radio", name=grade).dispatch_event("click")
        expect(each.locator("#status")).to_have_text("1 edit is safe on this tablet")
    can_be_used(page, "without network")
    for each in (page, other):
        each.context.set_offline(False)
    expect(page.locator(".dispute")).to_have_count(1, timeout=40_000)
    can_be_used(page, "two devices disagree")
    page.evaluate(FULL)
    page.get_by_label("In your own words").fill("Words.")
    page.locator(".sheet h2").tap()
    expect(page.get_by_role("dialog")).to_be_visible()
    can_be_used(page, "a change that could not be kept")
    other.context.close()
