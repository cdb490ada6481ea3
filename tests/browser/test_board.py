"""The public board in a spectator's browser: it stays fresh by itself."""

import pytest
from playwright.sync_api import expect

from tests.browser.test_journeys import enter

pytestmark = pytest.mark.browser


def test_the_board_shows_the_dog_in_hand_without_being_loaded_again(sized, fresh_site):
    spectator, judge = sized("phone", fresh_site.address), sized("tablet", fresh_site.address)
    spectator.goto("/ring/1/board/")
    enter(judge, "judge")
    judge.locator(".programme .class", has_text="Hovawart, bitches, veteran class").tap()
    number = judge.locator(".sheet h2 .number").inner_text()
    with judge.expect_response(lambda answer: answer.request.method == "POST" and answer.url.endswith("/edits/")):
        judge.locator("#point-skull .stop").nth(1).tap()
    # As where the phone is taken out of the pocket; it would ask by itself after a quarter of a minute.
    spectator.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    expect(spectator.locator(".lead")).to_have_text(f"Last in hand: number {number}")
    expect(spectator.locator("section", has_text="Now in the ring")).to_contain_text("Hovawart, bitches, veteran class")
