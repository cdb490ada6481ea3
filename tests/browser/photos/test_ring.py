"""Photos from the ring page: taken, marked and kept without network, sent when it is back, read beside the marks."""

from dataclasses import replace

import pytest
from playwright.sync_api import expect

from ringside.drawings.build import RECTANGULAR
from tests.browser.photos.camera import Camera, photo, places
from tests.browser.photos.hand import Hand, choose, numbers
from tests.browser.photos.test_marking import SMALL_TARGETS
from tests.browser.test_accessibility import violations
from tests.browser.test_journeys import enter
from tests.browser.test_without_network import CLASS, counted, tablet_of

pytestmark = pytest.mark.browser

STEEP = replace(RECTANGULAR, croup_slope=41)
PHOTOS = "__import__('ringside.photos.models', fromlist=['Photo']).Photo.objects.filter(ring__name='1')"


def test_a_photo_of_the_ring_needs_no_network_and_proposes_a_mark(playwright, fresh_site, tmp_path):
    context, page = tablet_of(playwright, fresh_site, tmp_path / "tablet")
    enter(page, "judge")
    expect(page.get_by_role("region", name="This tablet")).to_contain_text(
        "opens again without network", timeout=30_000
    )
    page.locator(".programme .class", has_text=CLASS).tap()
    expect(page.get_by_role("link", name="Photo of this dog")).to_be_visible()
    expect(page.locator(".photos")).to_contain_text("also without network", timeout=30_000)

    fresh_site.stop()
    page.get_by_role("link", name="Photo of this dog").tap()
    expect(page.locator("#back")).to_contain_text("number")
    sheet = page.locator("#back").get_attribute("href")
    choose(page, photo(STEEP, Camera()))
    Hand(page, 1.0).mark(places(STEEP, Camera()))
    assert len(numbers(page)) == 13
    page.get_by_role("button", name="Keep and read").tap()
    expect(page.locator("#where")).to_contain_text("safe on this device")
    page.locator("#back").tap()
    expect(page.locator(".photos")).to_contain_text("1 photo of this dog waits on this tablet")
    context.close()

    # The tablet was off in between.
    context, page = tablet_of(playwright, fresh_site, tmp_path / "tablet")
    page.goto(fresh_site.address + sheet)
    expect(page.locator(".photos")).to_contain_text("1 photo of this dog waits on this tablet")
    fresh_site.start()
    croup = page.locator("#point-croup .photo-said")
    expect(croup).to_contain_text("steep", timeout=60_000)
    expect(croup).to_contain_text("Rule of thumb: 30.0° ± 6.0°")
    expect(page.locator(".photos [role=status]")).to_have_text("")
    # A reading sets no mark by itself; the judge's tap does.
    expect(page.locator("#point-croup .stop[aria-pressed=true]")).to_have_count(0)
    assert page.evaluate(SMALL_TARGETS.replace("main :is", ":is(.photos, .photo-said) :is")) == []
    assert violations(page) == []
    croup.get_by_role("button").tap()
    expect(page.locator("#point-croup .stop[aria-pressed=true]")).to_have_count(1)
    expect(page.locator("#status")).to_have_text("Everything is on the server")
    page.get_by_role("link", name="The reading").tap()
    expect(page.get_by_role("heading", name="The reading")).to_be_visible()
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    page.get_by_role("link", name="Back to the sheet").tap()
    expect(page.locator(".sheet")).to_be_visible()
    context.close()
    assert counted(fresh_site, PHOTOS) == 1


def test_a_photo_waits_for_a_token_that_the_browser_has_lost_and_is_not_refused(sized, fresh_site):
    page = sized("tablet", fresh_site.address)
    enter(page, "judge")
    page.locator(".programme .class", has_text=CLASS).tap()
    address = page.get_by_role("link", name="Photo of this dog").get_attribute("href")
    sheet = page.url
    page.goto(fresh_site.address + address.removeprefix(fresh_site.address))
    choose(page, photo(STEEP, Camera()))
    Hand(page, 1.0).mark(places(STEEP, Camera()))
    page.context.clear_cookies(name="csrftoken")
    page.get_by_role("button", name="Keep and read").tap()
    expect(page.locator("#where")).to_contain_text("They go to the server")
    page.goto(sheet)
    expect(page.locator("#point-croup .photo-said")).to_contain_text("steep", timeout=60_000)
    assert counted(fresh_site, PHOTOS) == 1
