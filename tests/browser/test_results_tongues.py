"""The results pages in the secretary's language, on a desk's screen: nothing is cut off, no table has to scroll."""

import os

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import SIZES, follow
from tests.browser.test_accessibility import violations
from tests.browser.test_finals import BREEDS_ARE_DONE
from tests.browser.test_journeys import PICTURES, enter
from tests.browser.test_tongues import TOO_WIDE

pytestmark = pytest.mark.browser
RESULTS = "/office/alderwick/results"
PAGES = ("", "awards/", "finals/", "finals/groups/", "missing/", "points/", "day/", "day/add/", "day/reports/")
SAYS = {
    "de": ("de-DE", "Tagesbüro", "Titel", "Endausscheidungen"),
    "fr": ("fr-FR", "Bureau du jour", "Récompenses", "Finales"),
    "es": ("es-ES", "Mesa del día", "Premios", "Finales"),
}
# A table that does not fit scrolls inside its frame: on a desk's screen none may have to.
SCROLLS = """() => [...document.querySelectorAll(".table")]
    .filter((e) => e.scrollWidth > e.clientWidth + 1).map((e) => `${e.scrollWidth} in ${e.clientWidth}`)"""


def whole(page: Page, name: str) -> None:
    if os.environ.get("RINGSIDE_PICTURES"):
        page.screenshot(path=PICTURES / f"results-{name}.png", full_page=True)
    assert page.evaluate(TOO_WIDE) == [], name
    assert page.evaluate(SCROLLS) == [], name
    assert violations(page) == [], name


@pytest.mark.parametrize("language", SAYS)
def test_the_results_desk_speaks_the_secretarys_language_and_nothing_is_cut_off(browser, fresh_site, language):
    locale, day, awards, finals = SAYS[language]
    fresh_site.manage("shell", "-c", BREEDS_ARE_DONE)
    width, height = SIZES["desk"]
    context = browser.new_context(
        base_url=fresh_site.address, viewport={"width": width, "height": height}, locale=locale
    )
    page = context.new_page()
    enter(page, "secretary")
    page.goto(f"{RESULTS}/finals/")
    page.locator(f"form[action='{RESULTS}/finals/hold/'] button").click()
    for address in PAGES:
        page.goto(f"{RESULTS}/{address}")
        expect(page.locator("html")).to_have_attribute("lang", language)
        whole(page, f"{language}-{address.replace('/', '-')}")
    for address, words in (("day/", day), ("awards/", awards), ("finals/", finals)):
        page.goto(f"{RESULTS}/{address}")
        expect(page.locator("h1")).to_have_text(words)
        follow(page, page.locator(".desk tbody a").first)
        whole(page, f"{language}-{address.replace('/', '-')}one")
    context.close()
