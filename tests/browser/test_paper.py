"""A class judged on paper is typed in with a photo of the judge's page, and published."""

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import follow
from tests.browser.test_accessibility import violations
from tests.browser.test_journeys import enter
from tests.photos.pictures import picture

pytestmark = pytest.mark.browser
OFFICE = "/office/alderwick"


def test_a_class_judged_on_paper_is_typed_in_and_published(browser, fresh_site):
    page = browser.new_context(base_url=fresh_site.address, viewport={"width": 1440, "height": 900}).new_page()
    enter(page, "secretary")
    page.goto(f"{OFFICE}/results/day/")
    page.get_by_role("link", name="Boxer, junior class, dogs").click()
    follow(page, page.get_by_role("link", name="Judged on paper: type it in"))
    assert violations(page) == []
    grades, places = page.locator('select[name^="grade_"]'), page.locator('input[name^="place_"]')
    for index in range(grades.count()):
        grades.nth(index).select_option("excellent")
    places.nth(0).fill("1")
    page.get_by_label("Photo or scan of the signed page").set_input_files(
        {"name": "page.jpg", "mimeType": "image/jpeg", "buffer": b"no picture"}
    )
    page.get_by_role("button", name="Keep it").click()
    expect(page.get_by_role("alert")).to_contain_text("This file is no PDF")
    expect(places.nth(0)).to_have_value("1")
    assert violations(page) == []

    photo = {"name": "page.jpg", "mimeType": "image/jpeg", "buffer": picture(size=(1600, 1200))}
    page.get_by_label("Photo or scan of the signed page").set_input_files(photo)
    page.get_by_role("button", name="Keep it").click()
    expect(page.get_by_role("status")).to_contain_text("Typed in from the page that")
    expect(page.get_by_text("typed in by secretary@alderwick.example")).to_be_visible()
    with page.expect_download() as got:
        page.get_by_role("link", name="The judge's signed page").click()
    assert got.value.suggested_filename.endswith(".jpg")
    page.get_by_role("button", name="Publish this class").click()
    expect(page.get_by_role("status")).to_contain_text("Published: Boxer, junior class, dogs")
    assert violations(page) == []
    page.context.close()


def test_the_page_fits_a_phone(sized):
    page = sized("phone")
    enter(page, "secretary")
    page.goto(f"{OFFICE}/results/day/")
    page.get_by_role("link", name="Boxer, open class, dogs").click()
    follow(page, page.get_by_role("link", name="Judged on paper: type it in"))
    assert violations(page) == []
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
