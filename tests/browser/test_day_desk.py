"""The secretary's day through the browser, and every page of it usable by everybody."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import follow
from tests.browser.test_accessibility import violations
from tests.browser.test_journeys import enter
from tests.papers import reading

pytestmark = pytest.mark.browser
OFFICE = "/office/alderwick"


@pytest.mark.parametrize(
    "address",
    [f"{OFFICE}/results/day/", f"{OFFICE}/results/day/add/", f"{OFFICE}/results/day/reports/", f"{OFFICE}/who-may/",
     f"{OFFICE}/audit/", "/papers/show/alderwick/"],
)  # fmt: skip
def test_the_pages_of_the_day_have_no_violation(sized, address):
    page = sized("desk")
    enter(page, "secretary")
    page.goto(address)
    assert violations(page) == []


def test_what_is_kept_of_me_has_no_violation_on_a_phone(sized):
    page = sized("phone")
    enter(page, "exhibitor")
    page.goto("/my-dogs/kept/")
    assert violations(page) == []
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_a_day_at_the_desk(browser, fresh_site):
    """Absent and back, withdrawn, a result corrected: each shows where it is looked for, in page, paper and record."""
    page = browser.new_context(base_url=fresh_site.address, viewport={"width": 1440, "height": 900}).new_page()
    enter(page, "secretary")
    page.goto(f"{OFFICE}/results/day/")
    page.get_by_role("link", name="Boxer, junior class, dogs").click()
    page.get_by_role("button", name=re.compile("^absent")).first.click()
    expect(page.get_by_role("status")).to_contain_text("is absent.")
    assert violations(page) == []
    page.locator("summary", has_text="Withdraw").nth(1).click()
    page.get_by_label("Because", exact=True).locator("visible=true").select_option("ill-or-injured")
    page.get_by_label("In words").locator("visible=true").fill("Lame since yesterday, seen by a vet")
    page.get_by_role("button", name="Withdraw").locator("visible=true").click()
    expect(page.get_by_role("heading", name="Withdrawn")).to_be_visible()

    page.goto(f"{OFFICE}/results/")
    page.get_by_role("link", name="Hovawart, open class, dogs").click()
    follow(page, page.get_by_role("link", name="Correct a result"))
    assert violations(page) == []
    places = page.locator('input[name^="place_"]')
    first, second = places.nth(0), places.nth(1)
    first.fill("2")
    second.fill("1")
    page.get_by_label("Why it is corrected").fill("Two numbers were mixed up.")
    page.get_by_role("button", name="Correct", exact=True).click()
    expect(page.get_by_text("Corrected after publishing")).to_be_visible()
    assert violations(page) == []

    page.goto(f"{OFFICE}/audit/")
    for words in ("Mark presence", "Entry withdrawn", "Correct results"):
        expect(page.get_by_text(words)).to_be_visible()
    printed = page.request.get("/papers/show/alderwick/absentees.pdf").body()
    text = reading.text(printed)
    assert "Boxer, Junior class, dogs absent" in text
    assert "Boxer, Junior class, dogs withdrawn" in text
    page.context.close()
