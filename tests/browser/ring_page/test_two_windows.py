"""Two windows of one tablet are one hand: what was set in the one is replaced, not contradicted, from the other."""

import pytest
from playwright.sync_api import expect

pytestmark = pytest.mark.browser

CLASS = "Hovawart, dogs, junior class"


def test_a_mark_of_one_window_is_replaced_from_the_other_without_a_disagreement(in_class):
    first = in_class("tablet", CLASS)
    second = first.context.new_page()
    second.goto(first.url)
    stops = {page: page.locator(".row:has(.stops)").last.locator(".stop") for page in (first, second)}
    for page in (first, second):
        expect(stops[page].first).to_be_visible()
        expect(page.locator("#status")).to_have_text("Everything is on the server")
    first.context.set_offline(True)
    # Each has its own memory of the sheet by now, which the other's mark makes stale.
    for page, stop in ((first, 1), (second, 5), (first, 2), (second, 6)):
        stops[page].nth(stop).tap()
        expect(stops[page].nth(stop)).to_have_attribute("aria-pressed", "true")
    first.context.set_offline(False)
    for page in (first, second):
        expect(page.locator("#status")).to_have_text("Everything is on the server", timeout=60_000)
        expect(stops[page].nth(6)).to_have_attribute("aria-pressed", "true")
        expect(page.locator(".sheet .dispute:visible")).to_have_count(0)
