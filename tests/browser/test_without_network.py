"""The ring page goes on without a server, opens again without one, and loses nothing that a finger has set."""

import re
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, expect

from tests.browser.conftest import QUIET_TABLET
from tests.browser.test_journeys import enter
from tests.served import Site

pytestmark = pytest.mark.browser

CLASS = "Hovawart, dogs, junior class"
WITHDRAW = "from ringside.entries.models import Entry; Entry.objects.filter(number={}).update(state='withdrawn')"


def is_set(page: Page, point: str, stop: int) -> None:
    expect(page.locator(f"#point-{point} .stop").nth(stop)).to_have_attribute("aria-pressed", "true")


def tablet_of(playwright, site: Site, folder) -> tuple:
    """A tablet whose browser keeps its storage in a folder, as it does when it is switched off and on."""
    context = playwright.chromium.launch_persistent_context(
        folder, base_url=site.address, viewport={"width": 820, "height": 1180}, has_touch=True, **QUIET_TABLET
    )
    return context, context.pages[0]


def test_a_day_without_network_reaches_the_server_whole(playwright, fresh_site, tmp_path):
    context, page = tablet_of(playwright, fresh_site, tmp_path / "tablet")
    enter(page, "judge")
    expect(page.get_by_role("region", name="This tablet")).to_contain_text("opens again without network")
    page.locator(".programme .class", has_text=CLASS).tap()
    expect(page.locator(".sheet")).to_be_visible()
    address = page.url

    fresh_site.stop()
    page.locator("#point-skull .stop").nth(1).tap()
    is_set(page, "skull", 1)
    page.get_by_label("In your own words").fill("Kept without a server.")
    page.locator(".grade", has_text="Excellent").tap()
    expect(page.locator("#status")).to_have_text("3 edits are safe on this tablet")

    page.reload()
    is_set(page, "skull", 1)
    expect(page.get_by_label("In your own words")).to_have_value("Kept without a server.")
    context.close()

    context, page = tablet_of(playwright, fresh_site, tmp_path / "tablet")
    page.goto(address)
    is_set(page, "skull", 1)
    expect(page.locator(".tile .state").first).to_have_text("graded")
    page.locator("#point-stop .stop").nth(5).tap()
    page.get_by_role("button", name="Line-up").tap()
    page.locator(".lineup .tile").first.tap()
    expect(page.locator(".findings")).to_contain_text("No network")
    expect(page.locator("#status")).to_have_text("5 edits are safe on this tablet")

    fresh_site.start()
    expect(page.locator("#status")).to_have_text("Everything is on the server", timeout=60_000)
    context.close()
    assert counted(fresh_site, "Edit.objects.exclude(device='demo-tablet')") == 5
    assert counted(fresh_site, "Mark.objects.filter(point='skull', mark=-2)") == 1
    assert counted(fresh_site, "Mark.objects.filter(point='stop', mark=2)") >= 1


def counted(site: Site, rows: str) -> int:
    code = f"from ringside.ring.models import Edit, Mark; print({rows}.count())"
    return int(site.manage("shell", "--no-imports", "-c", code).strip())


def test_what_waits_can_be_handed_over_as_a_file(playwright, fresh_site, tmp_path):
    context, page = tablet_of(playwright, fresh_site, tmp_path / "tablet")
    enter(page, "judge")
    page.locator(".programme .class", has_text=CLASS).tap()
    expect(page.locator(".sheet")).to_be_visible()
    fresh_site.stop()
    page.locator("#point-skull .stop").nth(1).tap()
    is_set(page, "skull", 1)
    page.get_by_role("button", name="Classes").tap()
    with page.expect_download() as download:
        page.get_by_role("button", name="Hand over as a file").tap()
    assert '"mark.skull"' in download.value.path().read_text(encoding="utf-8")
    context.close()


def test_two_tablets_see_each_others_marks_and_settle_what_they_disagree_on(browser, fresh_site):
    pages = []
    for _ in range(2):
        context = browser.new_context(
            base_url=fresh_site.address, viewport={"width": 820, "height": 1180}, has_touch=True
        )
        page = context.new_page()
        enter(page, "judge")
        page.locator(".programme .class", has_text=CLASS).tap()
        expect(page.locator(".sheet")).to_be_visible()
        pages.append(page)
    first, second = pages
    first.locator("#point-skull .stop").nth(1).tap()
    expect(second.locator("#point-skull .stop").nth(1)).to_have_attribute("aria-pressed", "true")
    for page in pages:
        page.context.set_offline(True)
    first.locator("#point-stop .stop").nth(0).tap()
    second.locator("#point-stop .stop").nth(6).tap()
    for page, grade in ((first, "Excellent"), (second, "Very Good")):
        page.locator(".grade", has_text=re.compile(f"^{grade}$")).tap()
        expect(page.locator("#status")).to_have_text("2 edits are safe on this tablet")
    for page in pages:
        page.context.set_offline(False)
    for page in pages:
        expect(page.locator(".dispute")).to_have_count(2, timeout=40_000)
        expect(page.locator(".dispute", has_text="stop").locator(".option")).to_have_count(2)
    first.locator(".dispute .option", has_text="abrupt").tap()
    second.locator(".dispute", has_text="grade of number").locator(".option", has_text="Excellent").tap()
    for page in pages:
        expect(page.locator(".dispute")).to_have_count(0, timeout=20_000)
        is_set(page, "stop", 6)
        expect(page.get_by_role("radio", name="Excellent")).to_be_checked()
        page.context.close()


def test_what_the_server_holds_is_shown_and_the_judge_decides(browser, fresh_site):
    context = browser.new_context(base_url=fresh_site.address, viewport={"width": 820, "height": 1180}, has_touch=True)
    page = context.new_page()
    enter(page, "judge")
    page.locator(".programme .class", has_text=CLASS).tap()
    number = page.locator(".sheet h2 .number").inner_text()
    fresh_site.manage("shell", "--no-imports", "-c", WITHDRAW.format(number))
    page.locator("#point-skull .stop").nth(1).tap()
    expect(page.locator("#status")).to_have_text("Everything is on the server")
    expect(page.locator("#point-skull .stop").nth(1)).to_have_attribute("aria-pressed", "false")
    page.get_by_role("button", name="Classes").tap()
    expect(page.locator(".held")).to_contain_text(f"Number {number} was withdrawn.")
    assert Axe().run(page).response["violations"] == []
    page.get_by_role("button", name="It counts").tap()
    expect(page.locator(".held")).to_be_hidden()
    page.locator(".programme .class", has_text=CLASS).tap()
    is_set(page, "skull", 1)
    context.close()


def test_a_proxy_that_answers_for_a_dead_server_does_not_close_the_page(playwright, fresh_site, tmp_path):
    context, page = tablet_of(playwright, fresh_site, tmp_path / "tablet")
    enter(page, "judge")
    expect(page.get_by_role("region", name="This tablet")).to_contain_text("opens again without network")
    page.locator(".programme .class", has_text=CLASS).tap()
    fresh_site.stop()
    with only_errors(fresh_site.port):
        page.reload()
        page.locator("#point-skull .stop").nth(1).tap()
        is_set(page, "skull", 1)
        expect(page.locator("#status")).to_have_text("1 edit is safe on this tablet")
    context.close()


def test_a_newer_page_is_offered_once_nothing_waits_and_opens_without_network(playwright, fresh_site, tmp_path):
    context, page = tablet_of(playwright, fresh_site, tmp_path / "tablet")
    enter(page, "judge")
    this_tablet = page.get_by_role("region", name="This tablet")
    expect(this_tablet).to_contain_text("opens again without network")
    fresh_site.stop()
    fresh_site.environment["FIELD"] = "1"
    page.locator(".programme .class", has_text=CLASS).tap()
    page.locator("#point-skull .stop").nth(1).tap()
    is_set(page, "skull", 1)
    page.get_by_role("button", name="Classes").tap()
    context.route("**/edits/", lambda route: route.abort())
    fresh_site.start()
    page.reload()
    newer = page.get_by_role("button", name="A newer page is ready: load it")
    expect(this_tablet).to_contain_text("1 edit waits for the server")
    expect(newer).to_be_hidden()
    context.unroute("**/edits/")
    expect(newer).to_be_visible(timeout=60_000)
    with page.expect_navigation():
        newer.tap()
    fresh_site.stop()
    page.reload()
    expect(page.locator(".notice")).to_contain_text("Plain HTTP on a local network")
    context.close()


def test_a_plain_local_address_loses_nothing_and_says_what_it_cannot_do(playwright, fresh_site, tmp_path):
    to_site = [*QUIET_TABLET["args"], "--host-resolver-rules=MAP laptop.example 127.0.0.1"]
    plain = f"http://laptop.example:{fresh_site.port}"

    def tablet():
        context = playwright.chromium.launch_persistent_context(
            tmp_path / "tablet", base_url=plain, viewport={"width": 820, "height": 1180}, has_touch=True,
            **{**QUIET_TABLET, "args": to_site},
        )  # fmt: skip
        return context, context.pages[0]

    context, page = tablet()
    enter(page, "judge")
    expect(page.get_by_role("region", name="This tablet")).to_contain_text("cannot restart without network")
    page.locator(".programme .class", has_text=CLASS).tap()
    address = page.url
    fresh_site.stop()
    page.locator("#point-skull .stop").nth(1).tap()
    is_set(page, "skull", 1)
    expect(page.locator("#status")).to_have_text("1 edit is safe on this tablet")
    context.close()
    fresh_site.start()
    context, page = tablet()
    page.goto(address)
    expect(page.locator("#status")).to_have_text("Everything is on the server", timeout=60_000)
    is_set(page, "skull", 1)
    context.close()
    assert counted(fresh_site, "Mark.objects.filter(point='skull', mark=-2)") == 1


@contextmanager
def only_errors(port: int) -> Iterator[None]:
    """What stands before a dead server: it answers everything with 502."""

    class Handler(BaseHTTPRequestHandler):
        def log_message(self, *_) -> None:
            pass

        def do_GET(self) -> None:
            self.send_error(502)

        def do_POST(self) -> None:
            self.send_error(502)

    with ThreadingHTTPServer(("127.0.0.1", port), Handler) as server:
        server.daemon_threads = True
        thread = threading.Thread(target=server.serve_forever)
        thread.start()
        yield
        server.shutdown()
        thread.join()


def test_a_spare_tablet_is_paired_and_finds_everything(browser, fresh_site):
    office = browser.new_context(base_url=fresh_site.address, viewport={"width": 1440, "height": 900}).new_page()
    enter(office, "secretary")
    office.get_by_role("link", name="Show day").click()
    office.get_by_role("button", name="Show a code").click()
    code = office.locator(".code").inner_text()
    tablet = browser.new_context(base_url=fresh_site.address, viewport={"width": 820, "height": 1180}, has_touch=True)
    page = tablet.new_page()
    page.goto("/ring/pair/")
    page.get_by_label("Code").fill(code)
    page.get_by_role("button", name="Work in this ring with this tablet").tap()
    page.locator(".programme .class", has_text="Hovawart, dogs, open class").tap()
    expect(page.locator(".tile .state").first).to_have_text("placed")
    page.goto("/ring/pair/")
    page.get_by_label("Code").fill(code)
    page.get_by_role("button", name="Work in this ring with this tablet").tap()
    expect(page.locator(".errors")).to_contain_text("used already")

    office.get_by_label("Role").select_option("steward")
    office.get_by_role("button", name="Show a code").click()
    page.get_by_label("Code").fill(office.locator(".code").inner_text())
    page.get_by_role("button", name="Work in this ring with this tablet").tap()
    page.locator(".programme .class", has_text=CLASS).tap()
    expect(page.locator(".sheet")).to_contain_text("As steward you mark who is present.")
    expect(page.locator(".grades")).to_have_count(0)
    page.get_by_role("button", name="Absent").tap()
    expect(page.locator(".tile .state").first).to_have_text("absent")
    expect(page.locator("#status")).to_have_text("Everything is on the server")
    for context in (office.context, tablet):
        context.close()
