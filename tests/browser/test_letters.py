"""The secretary plans the times and writes to the exhibitors, on pages usable by everybody."""

import pytest
from playwright.sync_api import expect

from tests.browser.test_accessibility import violations
from tests.browser.test_journeys import enter
from tests.papers import reading

pytestmark = pytest.mark.browser
OFFICE = "/office/alderwick"


def test_the_exhibitors_are_told_a_changed_time(browser, fresh_site):
    page = browser.new_context(base_url=fresh_site.address, viewport={"width": 1440, "height": 900}).new_page()
    enter(page, "secretary")
    page.goto(f"{OFFICE}/letters/")
    assert violations(page) == []
    page.get_by_text("Read the first letter").click()
    expect(page.locator("pre.letter")).to_contain_text("planned for 09:30")
    assert violations(page) == []
    page.get_by_role("button", name="letters").first.click()
    expect(page.locator("#progress")).to_contain_text("Sent:", timeout=30_000)
    page.get_by_role("link", name="Show who was told").click()
    expect(page.get_by_role("button", name="Send")).to_have_count(0)

    page.goto(f"{OFFICE}/times/")
    assert violations(page) == []
    page.get_by_label("Hovawart: begins at").fill("13:45")
    page.get_by_role("button", name="Keep these times").click()
    expect(page.get_by_role("status")).to_contain_text("1 time is changed.")
    page.goto(f"{OFFICE}/letters/?state=changed")
    expect(page.get_by_role("cell", name="changed since it was told").first).to_be_visible()
    page.context.close()


def test_blank_award_cards_are_printed_from_the_papers_desk(sized):
    page = sized("desk")
    enter(page, "secretary")
    page.goto("/papers/show/alderwick/")
    with page.expect_download() as got:
        page.get_by_role("button", name="A4 Award cards").click()
    with open(got.value.path(), "rb") as file:
        assert "Signature" in reading.text(file.read())


@pytest.mark.parametrize("address", [f"{OFFICE}/letters/", f"{OFFICE}/times/?begins=09:00&minutes=3"])
def test_the_pages_fit_a_phone(sized, address):
    page = sized("phone")
    enter(page, "secretary")
    page.goto(address)
    assert violations(page) == []
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
