"""The judge rewrites a text: in a language of choice, kept when marks change, told where it no longer agrees."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.test_journeys import enter, keep_picture

pytestmark = pytest.mark.browser

CLASS = "Hovawart, bitches, junior class"


@pytest.fixture
def page(sized, fresh_site):
    page = sized("tablet", fresh_site.address)
    enter(page, "judge")
    page.locator(".programme .class", has_text=CLASS).tap()
    expect(page.locator(".sheet h2 .number")).to_be_visible()
    return page


def croup(page, mark: int) -> None:
    page.locator("#point-croup .stop").nth(mark + 3).tap()


def write_german(page) -> None:
    page.get_by_label("Language of page and text").select_option("de")
    croup(page, 2)
    expect(page.locator(".text .words")).to_have_attribute("lang", "de")
    expect(page.locator(".text .words")).to_contain_text("Kruppe")


def test_the_text_grows_in_the_language_the_judge_chose_and_stays_so_after_a_restart(page):
    write_german(page)
    page.reload()
    expect(page.locator(".text .words")).to_have_attribute("lang", "de")
    expect(page.locator("#tongue")).to_have_value("de")


def test_a_rewritten_text_is_kept_when_marks_change_and_says_what_no_longer_agrees(page):
    write_german(page)
    page.get_by_role("button", name="Selbst schreiben").tap()
    field = page.get_by_label("Ihr eigener Text, Deutsch")
    expect(field).to_have_value(re.compile("Kruppe"))
    own = field.input_value() + " Ein Blick, den man nicht vergisst."
    field.fill(own)
    expect(page.locator(".since")).to_be_hidden()
    page.locator(".sheet h2").tap()
    croup(page, -1)
    expect(page.locator(".since li")).to_have_count(1)
    expect(page.locator(".since li")).to_contain_text("Kruppe")
    expect(field).to_have_value(own)
    field.scroll_into_view_if_needed()
    keep_picture(page, "own-text")
    page.reload()
    expect(field).to_have_value(own)
    page.get_by_role("button", name="Wieder den verfassten Text nehmen").tap()
    expect(page.locator(".text .words")).to_contain_text("Kruppe")
    expect(field).to_be_hidden()


def test_sentences_written_by_hand_are_offered_for_the_next_dog(page):
    write_german(page)
    page.get_by_label("In eigenen Worten").fill("Ein Blick, den man nicht vergisst.")
    page.locator(".sheet h2").tap()
    number = page.locator(".sheet h2 .number").inner_text()
    page.get_by_role("button", name="Nächster Hund").tap()
    expect(page.locator(".sheet h2 .number")).not_to_have_text(number)
    offered = page.locator(".sheet .favourites")
    offered.locator("summary").tap()
    offered.get_by_role("button", name="Ein Blick").tap()
    expect(page.get_by_label("In eigenen Worten")).to_have_value("Ein Blick, den man nicht vergisst.")


def test_the_critiques_of_a_class_are_read_through_and_signed_apart_from_its_results(page):
    write_german(page)
    page.get_by_role("button", name="Aufstellung").tap()
    page.get_by_role("button", name="Berichte durchlesen").tap()
    first = page.locator(".one-critique", has_text="Kruppe")
    expect(first).to_contain_text("Nicht unterschrieben.")
    keep_picture(page, "critiques")
    first.get_by_role("button", name="Den Bogen").tap()
    expect(page.locator(".text .words")).to_contain_text("Kruppe")
    page.go_back()
    page.get_by_role("button", name="Diesen unterschreiben").first.tap()
    expect(first).to_contain_text("Unterschrieben.")
    expect(page.get_by_role("button", name="Berichte unterschreiben")).to_be_disabled()
    page.get_by_role("button", name="Zurück zur Aufstellung").tap()
    expect(page.get_by_role("button", name="Ergebnisse dieser Klasse unterschreiben")).to_be_visible()
