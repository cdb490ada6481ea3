"""A tablet that cannot keep a change says so over the whole page, and what was written can be copied or tried again."""

import pytest
from playwright.sync_api import expect

pytestmark = pytest.mark.browser

WORDS = "A bitch of great quality, shown in hard condition."
# The quota of a page that asked to be kept cannot be narrowed, so every write fails as on a full disk.
FULL = """() => {
  const { transaction } = IDBDatabase.prototype;
  IDBDatabase.prototype.transaction = function (names, mode) {
    if (mode === "readwrite") throw new DOMException("full", "QuotaExceededError");
    return transaction.call(this, names, mode);
  };
  window.room = () => { IDBDatabase.prototype.transaction = transaction; };
}"""


def test_what_could_not_be_kept_is_shown_to_copy_and_kept_once_there_is_room(in_class):
    page = in_class("tablet", "Bernese Mountain Dog, bitches, junior")
    number = page.locator(".sheet h2 .number").inner_text()
    page.evaluate(FULL)
    page.get_by_label("In your own words").fill(WORDS)
    page.locator(".sheet h2").tap()
    dialog = page.get_by_role("dialog", name="This tablet could not keep your last change")
    expect(dialog).to_be_visible()
    expect(dialog.get_by_label("Not kept")).to_have_value(f"Number {number}, remark: {WORDS}")
    expect(page.locator("#status")).to_contain_text("storage is full")

    page.evaluate("room()")
    dialog.get_by_role("button", name="Try again").tap()
    expect(dialog).to_be_hidden()
    expect(page.locator("#status")).to_have_text("Everything is on the server")
    expect(page.get_by_role("button", name="Undo what was kept late")).to_be_visible()
