"""What a tablet sends, in Chromium, to a server that loses answers, stalls and lies."""

import json
import re

import pytest
from playwright.sync_api import Page

from tests.merging.driving import other_tablet, send, settled, unsent, write
from tests.merging.server import RingServer

pytestmark = pytest.mark.browser


def test_all_that_waits_is_sent_and_leaves(tablet: Page, ring_server: RingServer) -> None:
    edits = [write(tablet, f"mark.point-{number}", number % 4)["id"] for number in range(120)]
    status = send(tablet)
    assert (status["state"], status["waiting"], unsent(tablet)) == ("all-on-server", 0, [])
    assert sorted(ring_server.order) == sorted(edits)
    assert max(map(len, ring_server.batches)) == 50


@pytest.mark.parametrize("trouble", ["lost", "portal", "redirect", "half", "500", "other digest", "401"])
def test_an_edit_stays_until_the_server_names_it(tablet: Page, ring_server: RingServer, trouble: str) -> None:
    edit = write(tablet, "mark.croup", 1)
    ring_server.troubles = [trouble]
    assert (send(tablet)["waiting"], unsent(tablet)) == (1, [edit["id"]])
    assert (send(tablet)["state"], unsent(tablet)) == ("all-on-server", [])
    assert ring_server.order == [edit["id"]]


@pytest.mark.parametrize(
    ("trouble", "state", "silent"),
    [("portal", "waiting", "network"), ("500", "waiting", "server"), ("401", "sign-in", "sign-in")],
)
def test_the_status_says_why_an_edit_still_waits(
    tablet: Page, ring_server: RingServer, trouble: str, state: str, silent: str
) -> None:
    write(tablet, "mark.croup", 1)
    ring_server.troubles = [trouble]
    status = send(tablet)
    assert (status["state"], status["silent"], status["heard"]) == (state, silent, None)


def test_a_stale_token_is_fetched_again_once(tablet: Page, ring_server: RingServer) -> None:
    write(tablet, "mark.croup", 1)
    ring_server.token = "second"
    assert send(tablet)["state"] == "all-on-server"
    assert len(ring_server.batches) == 2


def test_a_refused_edit_moves_aside_with_its_text_and_blocks_nothing(tablet: Page, ring_server: RingServer) -> None:
    refused = write(tablet, "mark.croup", 9)
    taken = write(tablet, "mark.bite", 1)
    status = send(tablet)
    assert (status["state"], status["refused"], ring_server.order) == ("refused", 1, [taken["id"]])
    (row,) = tablet.evaluate("() => tablet.store.refused()")
    assert (row["edit"], row["reason"]) == (refused, "A mark is a whole number from -3 to 3, or empty.")
    assert settled(tablet) == {"mark.bite": 1}
    tablet.evaluate("(id) => tablet.store.forgetRefused(id)", refused["id"])
    assert send(tablet)["state"] == "all-on-server"


def test_an_edit_that_the_server_chokes_on_blocks_no_other(tablet: Page, ring_server: RingServer) -> None:
    edits = [write(tablet, f"mark.point-{number}", 1)["id"] for number in range(20)]
    ring_server.chokes_on = edits[7]
    for _ in range(20):
        send(tablet)
    assert unsent(tablet) == [edits[7]]


def test_a_tablet_hears_what_another_wrote(tablet: Page) -> None:
    other = other_tablet(tablet)
    write(other, "mark.croup", 2)
    send(other)
    send(tablet)
    assert settled(tablet) == {"mark.croup": 2}
    edit = write(tablet, "mark.croup", 1)
    assert len(edit["replaces"]) == 1
    send(tablet)
    send(other)
    assert settled(other) == {"mark.croup": 1}
    other.context.close()


def test_news_are_asked_for_from_where_the_last_ended(tablet: Page, ring_server: RingServer) -> None:
    write(tablet, "mark.croup", 2)
    send(tablet)
    assert tablet.evaluate("() => tablet.store.recall('since /edits')") == len(ring_server.order) == 1


def test_a_signed_sheet_holds_what_another_tablet_adds(tablet: Page) -> None:
    write(tablet, "mark.croup", 1)
    tablet.evaluate("() => tablet.sign(tablet.store, 'entry:1')")
    send(tablet)
    other = other_tablet(tablet)
    late = write(other, "mark.bite", 2)
    send(other)
    send(tablet)
    merged = "async () => tablet.merged(await tablet.store.edits('entry:1'))"
    assert tablet.evaluate(merged)["held"] == [late["id"]]
    tablet.evaluate("(id) => tablet.sign(tablet.store, 'entry:1', [id])", late["id"])
    assert (tablet.evaluate(merged)["held"], tablet.evaluate(merged)["aside"]) == ([], [late["id"]])
    tablet.evaluate("() => tablet.sign(tablet.store, 'entry:1', [])")
    assert settled(tablet)["mark.bite"] == 2
    other.context.close()


def test_the_page_hears_each_answer_in_its_own_right(tablet: Page) -> None:
    first = write(tablet, "mark.croup", 1)
    other = other_tablet(tablet)
    rival, refused = write(other, "mark.croup", 2), write(other, "mark.bite", 9)
    send(tablet)
    send(other)
    answers = {answer["id"]: answer["state"] for page in (tablet, other) for answer in page.evaluate("tablet.answers")}
    assert answers == {first["id"]: "applied", rival["id"]: "disputed", refused["id"]: "refused"}
    other.context.close()


def test_the_status_counts_what_waits_before_and_after(tablet: Page) -> None:
    write(tablet, "mark.croup", 1)
    send(tablet)
    told = tablet.evaluate("tablet.told")
    assert [(status["state"], status["waiting"]) for status in told] == [("waiting", 1), ("all-on-server", 0)]


def test_a_started_outbox_sends_each_edit_by_itself(tablet: Page, ring_server: RingServer) -> None:
    tablet.evaluate("() => tablet.outbox.start()")
    with tablet.expect_response(lambda response: response.request.method == "POST" and response.ok):
        edit = write(tablet, "mark.croup", 1)
    assert (send(tablet)["state"], ring_server.order) == ("all-on-server", [edit["id"]])


@pytest.mark.parametrize("event", ["online", "pageshow"])
def test_a_started_outbox_sends_when_the_network_or_the_page_comes_back(tablet: Page, event: str) -> None:
    tablet.evaluate("() => tablet.outbox.start()")
    with tablet.expect_response(re.compile("/edits")):
        tablet.evaluate("(event) => { dispatchEvent(new Event(event)); }", event)


def test_an_edit_during_a_pause_waits_for_its_end(tablet: Page, ring_server: RingServer) -> None:
    ring_server.troubles = ["500"]
    tablet.evaluate("() => tablet.outbox.start()")
    with tablet.expect_response(lambda response: response.request.method == "POST" and response.ok):
        write(tablet, "mark.croup", 1)
    assert ring_server.troubles == []


def test_a_stopped_outbox_is_quiet(tablet: Page, ring_server: RingServer) -> None:
    tablet.evaluate("async () => { await tablet.outbox.start(); tablet.outbox.stop(); }")
    write(tablet, "mark.croup", 1)
    tablet.evaluate("() => { dispatchEvent(new Event('online')); }")
    assert (ring_server.batches, len(unsent(tablet))) == ([], 1)


def test_the_outbox_can_be_kept_as_a_file(tablet: Page) -> None:
    write(tablet, "mark.croup", 9)
    send(tablet)
    edit = write(tablet, "remark", "Kräftiger Rüde.")
    text = tablet.evaluate("async () => (await tablet.outbox.file()).text()")
    kept = json.loads(text)
    assert (kept["edits"], kept["refused"][0]["edit"]["value"]) == ([edit], 9)
