"""The real thing for the journeys: the server of a deployment, on a database of its own, with the demo show in it."""

import os
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from tests.conftest import QUIET
from tests.places import chromium
from tests.served import Site, served

SIZES = {"tablet": (820, 1180), "landscape": (1180, 820), "desk": (1440, 900), "phone": (390, 844)}

# What never comes is waited for longer, what comes is not: a machine with much to do is slow, not wrong.
expect.set_options(timeout=20_000)

# How a tablet's own browser is started, beside those that pytest starts.
SANDBOX = ["--no-sandbox"] if os.geteuid() == 0 else []
QUIET_TABLET = {"executable_path": chromium(), "args": [*QUIET, *SANDBOX]}


def follow(page: Page, link: Locator) -> None:
    """Clicks a link and waits for the page behind it: what is read of a page at once would be read of the old one."""
    with page.expect_navigation():
        link.click()


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Site]:
    folder = tmp_path_factory.mktemp("site")
    with served(folder, os.environ.get("BROWSER_DATABASE")) as site:
        yield site


@pytest.fixture
def fresh_site(tmp_path: Path) -> Iterator[Site]:
    """A site of one test's own, for journeys that change what others read."""
    with served(tmp_path, os.environ.get("BROWSER_DATABASE")) as site:
        yield site


@pytest.fixture
def sized(browser: Browser, site: Site) -> Iterator[object]:
    """Opens pages of a named size on the shared site: sized("phone")."""
    contexts, foreign = [], []

    def open_page(size: str, address: str = site.address, locale: str = "en-US") -> Page:
        width, height = SIZES[size]
        context = browser.new_context(
            base_url=address, viewport={"width": width, "height": height}, has_touch=size != "desk", locale=locale
        )
        contexts.append(context)
        page = context.new_page()
        ours = (address, "data:", "blob:")
        page.on("request", lambda request: request.url.startswith(ours) or foreign.append(request.url))
        return page

    yield open_page
    for context in contexts:
        context.close()
    assert foreign == [], "A page asked the network for something that is not this server's."
