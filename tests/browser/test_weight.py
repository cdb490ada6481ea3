"""A field's network is poor: what the ring page costs at first load, and that nothing is fetched twice."""

import pytest

from tests.browser.test_journeys import enter

pytestmark = pytest.mark.browser

MOST_BYTES = 100_000


@pytest.mark.parametrize(
    ("locale", "all_sent"), [("en-US", "Everything is on the server"), ("de-DE", "Alles ist auf dem Server")]
)
def test_the_ring_page_costs_at_most_100_kilobytes_at_first_load(sized, fresh_site, locale, all_sent):
    page = sized("tablet", fresh_site.address, locale)
    page.goto("/")
    network = page.context.new_cdp_session(page)
    network.send("Network.enable")
    addresses, sizes = {}, {}
    network.on("Network.responseReceived", lambda e: addresses.__setitem__(e["requestId"], e["response"]["url"]))
    network.on("Network.loadingFinished", lambda e: sizes.__setitem__(e["requestId"], e["encodedDataLength"]))
    page.locator("form[action='/demo/judge/'] button").click()
    page.locator(".programme .class").first.wait_for()
    page.locator("#status", has_text=all_sent).wait_for()
    # The polls that go on meanwhile bring nothing of the first load.
    seen = {one: address for one, address in addresses.items() if one in sizes}
    loaded = {address: sizes[one] for one, address in seen.items() if "?since=" not in address or sizes[one] > 2000}
    assert sum(loaded.values()) <= MOST_BYTES, sorted(loaded.items(), key=lambda one: -one[1])[:5]
    static = [address for address in addresses.values() if "/static/ring/" in address]
    assert len(static) == len(set(static))


def test_the_page_that_is_opened_again_fetches_no_module_again(sized):
    page = sized("tablet")
    enter(page, "judge")
    page.locator(".programme .class").first.wait_for()
    kept = page.request.get(page.locator("script[type=module]").get_attribute("src") or "")
    assert "immutable" in kept.headers["cache-control"]
