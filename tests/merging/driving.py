"""Driving a tablet's page: each function does one thing a judge or a bad day would."""

from typing import Any

from playwright.sync_api import Page


def write(tablet: Page, field: str, value: Any, sheet: str = "entry:1") -> dict[str, Any]:
    script = "([sheet, field, value]) => tablet.change(tablet.store, sheet, field, value)"
    edit: dict[str, Any] = tablet.evaluate(script, [sheet, field, value])
    return edit


def send(tablet: Page) -> dict[str, Any]:
    """Sends, and tells the status after it."""
    status: dict[str, Any] = tablet.evaluate("async () => { await tablet.outbox.send(); return tablet.outbox.status; }")
    return status


def unsent(tablet: Page) -> list[str]:
    return sorted(edit["id"] for edit in tablet.evaluate("() => tablet.store.unsent()"))


def settled(tablet: Page, sheet: str = "entry:1") -> dict[str, Any]:
    fields: dict[str, Any] = tablet.evaluate("(sheet) => tablet.settledSheet(sheet)", sheet)
    return fields


def other_tablet(tablet: Page) -> Page:
    """A tablet with a storage of its own."""
    browser = tablet.context.browser
    assert browser
    other = browser.new_context().new_page()
    other.goto(tablet.url)
    return other


def lose_connections(tablet: Page, times: int) -> None:
    """The next transactions find their connection gone, as it goes on tablets that slept."""
    tablet.evaluate(
        """(times) => {
        const transaction = IDBDatabase.prototype.transaction;
        IDBDatabase.prototype.transaction = function (...asked) {
            if (asked[1] !== 'readwrite' || times <= 0) return transaction.apply(this, asked);
            times -= 1;
            throw new DOMException('The database connection is closing.', 'InvalidStateError');
        };
    }""",
        times,
    )
