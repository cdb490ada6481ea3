"""The finals on the office's screen: from the breeds' winners over a group to best in show, with a correction after."""

import os

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.conftest import SIZES
from tests.browser.test_accessibility import violations
from tests.browser.test_journeys import PICTURES, enter
from tests.served import Site

pytestmark = pytest.mark.browser

# Three breeds have their best of breed, signed and published; the first of each open class of dogs.
BREEDS_ARE_DONE = """
from ringside.entries.models import Entry
from ringside.results.models import AwardGiven, AwardsPublication
from ringside.shows.models import ShowBreed
for breed in ShowBreed.objects.filter(show__slug="alderwick").order_by("id"):
    first = Entry.objects.filter(show_class__show_breed=breed, show_class__code="open").order_by("number").first()
    second = Entry.objects.filter(show_class=first.show_class).order_by("number")[1]
    AwardsPublication.objects.create(show_breed=breed)
    AwardGiven.objects.create(show_breed=breed, award="cacib", sex=first.dog.sex, entry=first)
    AwardGiven.objects.create(show_breed=breed, award="reserve-cacib", sex=first.dog.sex, entry=second)
    AwardGiven.objects.create(show_breed=breed, award="best-of-breed", entry=first)
"""


def seen(page: Page, name: str) -> None:
    """The screens are kept where RINGSIDE_PICTURES is set."""
    if os.environ.get("RINGSIDE_PICTURES"):
        PICTURES.mkdir(exist_ok=True)
        page.screenshot(path=PICTURES / f"finals-{name}.png", full_page=True)


def at_the_desk(browser: Browser, site: Site) -> Page:
    width, height = SIZES["desk"]
    page = browser.new_context(base_url=site.address, viewport={"width": width, "height": height}).new_page()
    enter(page, "secretary")
    page.get_by_role("link", name="Results", exact=True).click()
    page.get_by_role("link", name="Finals", exact=True).click()
    return page


def judge_and_record(page: Page, numbers: list[str]) -> None:
    page.get_by_label("Judge of this final").fill("Jo Finch")
    page.get_by_role("button", name="Name the judge").click()
    expect(page.locator(".messages")).to_contain_text("Judge of this final: Jo Finch.")
    for place, number in enumerate(numbers, 1):
        page.get_by_label(f"Place {place}, number").fill(number)
    page.get_by_label("The judge has signed the paper").check()
    page.get_by_role("button", name="Record").click()
    expect(page.locator(".messages")).to_contain_text("recorded and signed")


def publish(page: Page) -> None:
    page.get_by_role("button", name="Publish this final").click()
    expect(page.locator(".messages")).to_contain_text("Published.")


def competing(page: Page) -> list[str]:
    return page.get_by_role("table", name="Dogs of this final").locator("tbody td.num").all_inner_texts()


def test_a_group_and_best_in_show_are_recorded_published_corrected_and_cancelled(browser, fresh_site):
    fresh_site.manage("shell", "--no-imports", "-c", BREEDS_ARE_DONE)
    page = at_the_desk(browser, fresh_site)
    page.get_by_role("button", name="Hold finals at this show").click()
    expect(page.locator(".messages")).to_contain_text("are held")
    group = page.get_by_role("link", name="Best in group: Pinscher and Schnauzer")
    group.click()
    numbers = competing(page)
    assert len(numbers) == 3
    page.get_by_label("Place 1, number").fill("9999")
    page.get_by_role("button", name="Record").click()
    expect(page.get_by_role("alert")).to_contain_text("No dog of this show has the number 9999.")
    expect(page.get_by_label("Place 1, number")).to_have_value("9999")
    seen(page, "refused")
    judge_and_record(page, [numbers[1], numbers[0]])
    publish(page)
    page.get_by_role("link", name="All finals").click()
    page.get_by_role("link", name="Best in show", exact=True).click()
    assert competing(page) == [numbers[1]]
    judge_and_record(page, [numbers[1]])
    seen(page, "one")
    publish(page)
    assert violations(page) == []
    page.get_by_role("link", name="All finals").click()
    tree = page.locator(".tree").first
    expect(tree.locator("> li > .node > .what").first).to_have_text("Best in show")
    expect(tree.locator("> li > .node .who strong").first).to_have_text(numbers[1])
    expect(tree.locator("li[data-wins] > .node > .what").first).to_contain_text("Best in group")
    assert violations(page) == []
    seen(page, "all")
    correct_it(page, numbers)
    cancel_a_winner(page, numbers)
    page.get_by_role("link", name="Still missing").click()
    expect(page.locator("table")).to_contain_text("the name of its judge")
    assert violations(page) == []
    seen(page, "missing")
    page.get_by_role("link", name="Points", exact=True).click()
    expect(page.locator(".desk")).to_contain_text("counts no points at a show")


def correct_it(page: Page, numbers: list[str]) -> None:
    page.get_by_role("link", name="Best in group: Pinscher and Schnauzer").click()
    page.get_by_role("link", name="Correct this final").click()
    page.get_by_label("Place 1, number").fill(numbers[1])
    page.get_by_label("Place 2, number").fill(numbers[2])
    page.get_by_label("Why it is corrected").fill("The judge's paper was misread.")
    page.get_by_role("button", name="Correct").click()
    expect(page.get_by_role("table", name="Corrections of awards")).to_contain_text("The judge's paper was misread.")
    assert violations(page) == []
    seen(page, "corrected")
    page.get_by_role("link", name="All finals").click()


def cancel_a_winner(page: Page, numbers: list[str]) -> None:
    page.get_by_role("link", name="Awards", exact=True).click()
    page.locator("tr", has_text=f"Best of breed: {numbers[1]}").get_by_role("link").first.click()
    page.get_by_role("link", name="Cancel a dog's awards").click()
    page.get_by_label("Number of the dog").fill(numbers[1])
    page.get_by_label("Why its awards are cancelled").fill("Disqualified by the governing body.")
    page.get_by_role("button", name="Cancel its awards").click()
    changed = page.get_by_role("table", name="Corrections of awards")
    expect(changed).to_contain_text("passed on as the rules say")
    expect(page.locator(".tree").first).to_contain_text("cancelled")
    assert violations(page) == []
    seen(page, "cancelled")
    page.get_by_role("link", name="All awards").click()
    page.get_by_role("link", name="Finals", exact=True).click()
    expect(page.get_by_role("table", name="Corrections of awards")).to_contain_text("Best in show")
