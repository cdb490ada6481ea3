"""What a tablet keeps, in Chromium, while its storage comes and goes."""

import pytest
from playwright.sync_api import Page

from tests.merging.driving import lose_connections, send, settled, unsent, write
from tests.merging.server import RingServer

pytestmark = pytest.mark.browser


def test_a_change_is_kept_and_waits(tablet: Page) -> None:
    edit = write(tablet, "mark.croup", 1)
    assert (unsent(tablet), settled(tablet)) == ([edit["id"]], {"mark.croup": 1})


def test_a_draft_is_kept_and_becomes_one_edit(tablet: Page, ring_server: RingServer) -> None:
    tablet.evaluate("() => tablet.store.draft('entry:1', 'remark', 'Lovely he')")
    tablet.reload()
    drafts = "() => tablet.store.drafts('entry:1')"
    assert tablet.evaluate(drafts) == [{"sheet": "entry:1", "field": "remark", "value": "Lovely he"}]
    write(tablet, "mark.croup", 1)
    assert len(tablet.evaluate(drafts)) == 1
    edit = write(tablet, "remark", "Lovely head.")
    assert tablet.evaluate(drafts) == []
    assert send(tablet)["state"] == "all-on-server"
    assert edit["id"] in ring_server.order


def test_a_new_edit_replaces_its_whole_unsent_chain(tablet: Page) -> None:
    first, second, third = (write(tablet, "mark.croup", step) for step in (1, 2, 3))
    assert third["replaces"] == sorted([first["id"], second["id"]])
    assert settled(tablet) == {"mark.croup": 3}


@pytest.mark.parametrize("remembered", [False, True])
def test_changes_at_the_same_moment_do_not_dispute_each_other(tablet: Page, remembered: bool) -> None:
    if remembered:
        tablet.evaluate("() => Promise.all([tablet.store.edits('entry:1'), tablet.store.unsent()])")
    tablet.evaluate(
        "() => Promise.all([1, 2, 3, 2, 1].map((n) => tablet.change(tablet.store, 'entry:1', 'mark.croup', n)))"
    )
    assert settled(tablet) == {"mark.croup": 1}


def test_two_windows_of_a_tablet_share_its_id_and_edits(tablet: Page) -> None:
    window = tablet.context.new_page()
    window.goto(tablet.url)
    first, second = write(tablet, "mark.croup", 1), write(window, "mark.croup", 2)
    assert (second["device"], second["replaces"]) == (first["device"], [first["id"]])


def test_what_another_window_wrote_since_is_replaced_too(tablet: Page) -> None:
    window = tablet.context.new_page()
    window.goto(tablet.url)
    mine = write(tablet, "mark.croup", 1)
    theirs = write(window, "mark.croup", 2)
    again = write(tablet, "mark.croup", 3)
    # Kept at once without having seen the other's, then once more over both.
    [hurried] = set(unsent(tablet)) - {mine["id"], theirs["id"], again["id"]}
    assert again["replaces"] == sorted([mine["id"], theirs["id"], hurried])
    assert len(unsent(tablet)) == 4
    assert settled(tablet) == {"mark.croup": 3}


@pytest.mark.parametrize("failures", [1, 2, 3])
def test_a_lost_connection_to_the_storage_is_opened_again(tablet: Page, failures: int) -> None:
    lose_connections(tablet, failures)
    write(tablet, "mark.croup", 1)
    assert (tablet.evaluate("() => tablet.failures"), len(unsent(tablet))) == ([], 1)


def test_after_four_tries_the_tablet_says_that_nothing_is_kept(tablet: Page) -> None:
    write(tablet, "mark.bite", 1)
    lose_connections(tablet, 4)
    script = """async () => {
        const kept = await tablet.store.draft('entry:1', 'remark', 'x').then(() => true, () => false);
        await tablet.outbox.send();
        return [kept, tablet.outbox.status.state];
    }"""
    assert tablet.evaluate(script) == [False, "storage-failed"]
    assert tablet.evaluate("() => tablet.failures") == ["failed"]
    tablet.evaluate("() => tablet.store.draft('entry:1', 'remark', 'x')")
    assert send(tablet)["state"] == "all-on-server"


def test_a_connection_that_closes_is_opened_again(tablet: Page) -> None:
    tablet.evaluate("""() => {
        const open = IDBFactory.prototype.open;
        IDBFactory.prototype.open = function (...named) {
            const request = open.apply(this, named);
            request.addEventListener('success', () => { globalThis.connection = request.result; });
            return request;
        };
    }""")
    write(tablet, "mark.croup", 1)
    tablet.evaluate("() => connection.close()")
    write(tablet, "mark.croup", 2)
    tablet.evaluate("() => { connection.dispatchEvent(new Event('close')); }")
    write(tablet, "mark.croup", 3)
    assert (settled(tablet), tablet.evaluate("() => tablet.failures")) == ({"mark.croup": 3}, [])


def test_a_full_storage_is_told_as_full(tablet: Page, ring_server: RingServer) -> None:
    session = tablet.context.new_cdp_session(tablet)
    session.send("Storage.overrideQuotaForOrigin", {"origin": ring_server.address, "quotaSize": 2000})
    script = """async () => {
        const text = 'x'.repeat(19000);
        const change = tablet.change(tablet.store, 'entry:1', 'remark', text);
        const kept = await change.then(() => true, () => false);
        await tablet.outbox.send();
        return [kept, tablet.failures[0], tablet.outbox.status.state];
    }"""
    assert tablet.evaluate(script) == [False, "full", "storage-full"]


def test_what_the_tablet_does_by_itself_waits_for_the_finger(tablet: Page) -> None:
    script = """async () => {
        const { feelFinger, fingerLifted } = await import('/static/ring/finger.js');
        const touch = (kind) => document.body.dispatchEvent(new PointerEvent(kind, { bubbles: true }));
        const hasPassed = async () => {
            let passed = false;
            const waiting = fingerLifted().then(() => { passed = true; });
            for (let turn = 0; turn < 9; turn += 1) await null;
            return { passed, waiting };
        };
        feelFinger();
        const before = await hasPassed();
        touch('pointerdown');
        const during = await hasPassed();
        touch('pointerup');
        await during.waiting;
        return [before.passed, during.passed];
    }"""
    assert tablet.evaluate(script) == [True, False]
