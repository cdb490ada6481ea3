"""The ring page on a site of its own, so that no other journey's marks stand in it."""

import os
from collections.abc import Callable, Iterator

import pytest
from playwright.sync_api import Page, expect

from tests.browser.test_journeys import enter
from tests.served import Site, served


@pytest.fixture(scope="session")
def ring_site(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Site]:
    with served(tmp_path_factory.mktemp("ring"), os.environ.get("BROWSER_DATABASE")) as site:
        yield site


@pytest.fixture
def in_class(sized, ring_site: Site) -> Callable[[str, str], Page]:
    """Opens a class in the judge's hand: in_class("tablet", "Hovawart, dogs, open class")."""

    def open_class(size: str, name: str) -> Page:
        page = sized(size, ring_site.address)
        enter(page, "judge")
        page.locator(".programme .class", has_text=name).tap()
        expect(page.locator(".sheet")).to_be_visible()
        return page

    return open_class
