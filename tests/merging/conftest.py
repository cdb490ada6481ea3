"""The ring's small server, and a page of it."""

import threading
from collections.abc import Iterator

import pytest
from playwright.sync_api import Page

from tests.merging.server import RingServer


@pytest.fixture
def ring_server() -> Iterator[RingServer]:
    with RingServer() as server:
        thread = threading.Thread(target=server.serve_forever)
        thread.start()
        yield server
        server.shutdown()
        thread.join()


@pytest.fixture
def tablet(page: Page, ring_server: RingServer) -> Page:
    page.goto(ring_server.address)
    return page
