"""A browser that is killed without a word, as when a tablet's battery dies."""

import os
import re
import signal
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Playwright

from tests.merging.driving import unsent, write
from tests.merging.server import RingServer
from tests.places import chromium

pytestmark = pytest.mark.browser


class MortalBrowser:
    """Chromium as a process of its own, that can be killed without a word and started again on the same storage."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.process: subprocess.Popen[bytes] | None = None

    def start(self) -> str:
        """The address at which the browser takes commands."""
        options = [
            "--headless=new",
            "--no-sandbox",
            "--no-first-run",
            "--disable-gpu",
            "--disable-background-networking",
        ]
        command = [str(chromium()), *options, "--remote-debugging-port=0", f"--user-data-dir={self.folder}"]
        self.process = subprocess.Popen(command, stderr=subprocess.PIPE, start_new_session=True)
        assert self.process.stderr
        for line in self.process.stderr:
            if found := re.search(rb"DevTools listening on (ws://\S+)", line):
                return found[1].decode()
        raise AssertionError("Chromium did not start")

    def kill(self) -> None:
        if self.process and self.process.poll() is None:
            os.killpg(self.process.pid, signal.SIGKILL)
            self.process.wait()
            assert self.process.stderr
            self.process.stderr.close()


@pytest.fixture
def mortal_browser(tmp_path: Path) -> Iterator[MortalBrowser]:
    browser = MortalBrowser(tmp_path)
    yield browser
    browser.kill()


def test_a_killed_browser_keeps_every_edit_it_called_kept(
    mortal_browser: MortalBrowser, playwright: Playwright, ring_server: RingServer
) -> None:
    edits: list[str] = []
    for number in range(3):
        mortal_browser.kill()
        browser = playwright.chromium.connect_over_cdp(mortal_browser.start())
        page = browser.contexts[0].new_page()
        page.goto(ring_server.address)
        assert unsent(page) == sorted(edits)
        edits.append(write(page, f"mark.point-{number}", 1)["id"])
