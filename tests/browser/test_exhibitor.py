"""The exhibitor on a phone: reads in a language of choice, shares by a link, takes it back, asks for a correction."""

import pytest
from playwright.sync_api import expect

from tests.browser.test_journeys import enter, keep_picture

pytestmark = pytest.mark.browser


@pytest.fixture
def page(sized, fresh_site):
    page = sized("phone", fresh_site.address)
    enter(page, "exhibitor")
    page.get_by_text("Read the critique").tap()
    expect(page.locator(".words p").first).to_be_visible()
    return page


def test_a_critique_is_shared_by_a_link_that_can_be_withdrawn(page, sized, fresh_site):
    name = page.locator("h1").inner_text()
    words = page.locator(".words p").first.inner_text()
    page.get_by_role("button", name="Make a link").tap()
    link = page.get_by_label("Whoever has this link").input_value()
    keep_picture(page, "share")

    friend = sized("phone", fresh_site.address)
    friend.goto(link)
    expect(friend.locator("h1")).to_have_text(name)
    expect(friend.locator(".words p").first).to_have_text(words)
    friend.get_by_role("link", name="français").tap()
    expect(friend.locator(".words")).to_have_attribute("lang", "fr")
    keep_picture(friend, "shared")

    page.get_by_role("button", name="Withdraw the link").tap()
    expect(page.locator(".messages")).to_contain_text("leads nowhere")
    answer = friend.goto(link)
    assert answer is not None
    assert answer.status == 404


def test_the_text_changes_its_language_in_place(page):
    page.get_by_role("navigation", name="Language of the critique").get_by_role("link", name="Deutsch").tap()
    expect(page.locator(".words")).to_have_attribute("lang", "de")
    expect(page.get_by_role("link", name="PDF, Deutsch")).to_be_visible()
    expect(page.get_by_role("link", name="PDF on US Letter, Deutsch")).to_be_visible()


def test_a_wrong_name_reaches_the_office_and_its_answer_comes_back(page, sized, fresh_site):
    page.get_by_role("link", name="A name, a number or a date is wrong").tap()
    page.get_by_label("What is wrong").select_option("name")
    page.get_by_label("How it should read").fill("With an accent: André.")
    page.get_by_role("button", name="Send it to the office").tap()
    expect(page.locator("main")).to_contain_text("Not answered yet.")

    office = sized("desk", fresh_site.address)
    enter(office, "secretary")
    office.get_by_role("link", name="Results", exact=True).click()
    office.get_by_role("link", name="Requests (1 open)").click()
    office.get_by_label("Answer to the owner").fill("Corrected, with thanks.")
    keep_picture(office, "requests")
    office.get_by_role("button", name="Answer and close").click()
    page.reload()
    expect(page.locator("main")).to_contain_text("Answer: Corrected, with thanks.")


def test_the_office_prints_all_critiques_while_it_looks_on(sized, fresh_site):
    office = sized("desk", fresh_site.address)
    enter(office, "secretary")
    office.get_by_role("link", name="Results", exact=True).click()
    office.get_by_label("Language").select_option("fr")
    office.get_by_role("button", name="Print all critiques").click()
    link = office.get_by_role("link", name="Take the file")
    expect(link).to_be_visible()
    with office.expect_download() as download:
        link.click()
    assert download.value.suggested_filename.endswith("-fr.pdf")
