"""The certificate round of a breed of two small classes, without network, to the tree on the office's page."""

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from tests.browser.conftest import SIZES
from tests.browser.test_accessibility import SMALL_TARGETS, violations
from tests.browser.test_journeys import enter
from tests.served import Site

pytestmark = pytest.mark.browser

BREED = "Bernese Mountain Dog"
# All but the two open classes go, so that the breed is judged in a moment.
TWO_CLASSES = """
from ringside.entries.models import Entry
rest = Entry.objects.filter(show_class__show_breed__breed="bernese-mountain-dog").exclude(show_class__code="open")
rest.update(state="withdrawn")
"""
# The first dog of the open class stands in the champion class as well, under its one number.
FIRST_TWICE = (
    TWO_CLASSES
    + """
from ringside.shows.models import ShowClass
of_breed = Entry.objects.filter(show_class__show_breed__breed="bernese-mountain-dog", state="entered")
first = of_breed.filter(show_class__sex="dog").select_related("show_class").order_by("number").first()
champions, _ = ShowClass.objects.get_or_create(
    show_breed=first.show_class.show_breed, sex="dog", code="champion", defaults={"order": first.show_class.order + 1}
)
Entry.objects.create(show_id=first.show_id, dog_id=first.dog_id, show_class=champions, number=first.number)
"""
)


def a_page(browser: Browser, site: Site, size: str, face: str) -> Page:
    width, height = SIZES[size]
    viewport = {"width": width, "height": height}
    page = browser.new_context(base_url=site.address, viewport=viewport, has_touch=size != "desk").new_page()
    enter(page, face)
    return page


def judge(page: Page, words: str) -> list[str]:
    """Every dog of a class Excellent, three at most placed in the order of the catalogue, signed; their numbers."""
    page.locator(".programme .class", has_text=f"{BREED}, {words}").tap()
    tiles = page.locator(".tiles .tile")
    expect(tiles.first).to_be_visible()
    numbers = page.locator(".tiles .number").all_inner_texts()
    for index in range(len(numbers)):
        tiles.nth(index).tap()
        expect(page.locator(".sheet h2 .number")).to_have_text(numbers[index])
        page.locator(".grade", has_text="Excellent").tap()
        expect(tiles.nth(index).locator(".state")).to_have_text("graded")
    page.get_by_role("button", name="Line-up").tap()
    for place in range(min(3, len(numbers))):
        page.locator(".lineup .tile").nth(place).tap()
        expect(page.locator(".order .place")).to_have_count(place + 1)
    page.get_by_role("button", name="Sign the results of this class").tap()
    expect(page.locator(".signing")).to_contain_text("Results signed")
    page.get_by_role("button", name="Classes").tap()
    return numbers


def award(page: Page, name: str) -> Locator:
    return page.get_by_role("region", name=name, exact=True)


def give(page: Page, name: str, number: str) -> None:
    tile = award(page, name).locator(".tile", has=page.get_by_text(number, exact=True))
    tile.tap()
    expect(tile).to_have_attribute("aria-pressed", "true")


def offers(page: Page, name: str, *numbers: str) -> None:
    """These numbers, and no others, are there to be tapped."""
    expect(award(page, name).locator(".tile .number")).to_have_text(list(numbers))


def test_two_classes_become_a_best_of_breed_without_network_and_a_tree_in_the_office(browser, fresh_site):
    fresh_site.manage("shell", "--no-imports", "-c", TWO_CLASSES)
    page = a_page(browser, fresh_site, "tablet", "judge")
    row = page.locator(".programme li", has_text=f"{BREED}: awards")
    expect(row.locator(".state")).to_have_text("to come")
    dogs = judge(page, "dogs, open class")
    bitches = judge(page, "bitches, open class")
    expect(row.locator(".state")).to_have_text("ready")
    expect(page.locator("#status")).to_have_text("Everything is on the server")

    fresh_site.stop()
    row.locator(".class").tap()
    offers(page, "CACIB, dogs", dogs[0])
    offers(page, "Reserve CACIB, dogs")
    give(page, "CACIB, dogs", dogs[0])
    # French rules on the CACIB and its reserve, club copy: the second of the winner's class competes for the reserve.
    offers(page, "Reserve CACIB, dogs", dogs[1])
    give(page, "Reserve CACIB, dogs", dogs[1])
    give(page, "CACIB, bitches", bitches[0])
    award(page, "Reserve CACIB, bitches").get_by_role("button", name="Withheld").tap()
    expect(award(page, "Reserve CACIB, bitches").locator(".state").first).to_have_text("withheld")
    give(page, "Best of sex, dogs", dogs[0])
    give(page, "Best of sex, bitches", bitches[0])
    give(page, "Best of breed", dogs[0])
    offers(page, "Best of opposite sex", bitches[0])
    page.get_by_role("button", name="Undo Best of breed").tap()
    expect(award(page, "Best of breed").locator(".state").first).to_have_text("undecided")
    give(page, "Best of breed", bitches[0])
    give(page, "Best of opposite sex", dogs[0])
    expect(page.locator(".calls li")).to_have_text(
        [
            f"Number {dogs[0]}: CACIB", f"Number {dogs[1]}: Reserve CACIB", f"Number {dogs[0]}: Best of sex",
            f"Number {bitches[0]}: CACIB", f"Number {bitches[0]}: Best of sex", f"Number {bitches[0]}: Best of breed",
            f"Number {dogs[0]}: Best of opposite sex",
        ]
    )  # fmt: skip
    page.get_by_role("button", name="Sign the awards").tap()
    expect(page.locator(".signing")).to_contain_text("Awards signed")
    page.reload()
    expect(award(page, "Best of breed").locator(".state").first).to_have_text(f"number {bitches[0]}")

    fresh_site.start()
    expect(page.locator("#status")).to_have_text("Everything is on the server", timeout=60_000)
    assert_office_shows_it(a_page(browser, fresh_site, "desk", "secretary"), dogs, bitches)


def assert_office_shows_it(office: Page, dogs: list[str], bitches: list[str]) -> None:
    office.get_by_role("link", name="Results", exact=True).click()
    office.get_by_role("link", name="Awards", exact=True).click()
    line = office.locator("tr", has_text=BREED)
    expect(line).to_contain_text(f"Best of breed: {bitches[0]}")
    expect(line).to_contain_text("2 classes to be published first")
    line.get_by_role("link", name=BREED).click()
    top = office.locator(".tree > li > .node").first
    expect(top.locator(".what")).to_have_text(["Best of breed", "Best of opposite sex"])
    expect(top.locator(".who strong")).to_have_text([bitches[0], dogs[0]])
    reserve = office.locator(".tree .beside", has_text="Reserve CACIB, dogs")
    expect(reserve.locator(".who strong")).to_have_text(dogs[1])
    expect(office.locator(".tree .beside", has_text="Reserve CACIB, bitches")).to_contain_text("withheld")
    below = office.locator(".tree").first.locator("> li > ul > li[data-wins] > .node > .what")
    expect(below).to_have_text("Best of sex, bitches")
    assert violations(office) == []
    office.get_by_role("link", name="Results", exact=True).click()
    for title in (f"{BREED}, open class, dogs", f"{BREED}, open class, bitches"):
        office.get_by_role("link", name=title, exact=True).click()
        office.get_by_role("button", name="Publish this class").click()
        expect(office.locator(".messages")).to_contain_text("Published")
        office.get_by_role("link", name="Results", exact=True).click()
    office.get_by_role("link", name="Awards", exact=True).click()
    office.locator("tr", has_text=BREED).get_by_role("link", name="ready to publish").click()
    office.get_by_role("button", name="Publish these awards").click()
    expect(office.locator("#card")).to_contain_text("Exhibitors can read which awards their dogs won")


def test_a_dog_in_two_classes_is_one_tile_and_one_competitor(browser, fresh_site):
    fresh_site.manage("shell", "--no-imports", "-c", FIRST_TWICE)
    page = a_page(browser, fresh_site, "tablet", "judge")
    dogs = judge(page, "dogs, open class")
    assert judge(page, "dogs, champion class") == dogs[:1]
    page.locator(".programme .class", has_text=f"{BREED}: awards").tap()
    offers(page, "CACIB, dogs", dogs[0])
    expect(award(page, "CACIB, dogs").locator(".tile .state")).to_have_text("open, first · champion, first")
    give(page, "CACIB, dogs", dogs[0])
    offers(page, "Reserve CACIB, dogs", dogs[1])
    award(page, "Best of sex, dogs").get_by_text("Another number").tap()
    expect(award(page, "Best of sex, dogs").locator(".another .number")).to_have_text(dogs)
    award(page, "CACIB, dogs").locator(".tile").tap()
    expect(award(page, "CACIB, dogs").locator("h4 .state")).to_have_text("undecided")


@pytest.mark.parametrize("size", ["tablet", "landscape", "phone"])
def test_the_awards_can_be_used_by_everybody_and_say_what_is_missing(sized, fresh_site, size):
    page = sized(size, fresh_site.address)
    enter(page, "judge")
    page.locator(".programme .class", has_text="Hovawart: awards").tap()
    expect(page.locator(".awards > .missing")).to_contain_text("Bitches, not signed yet: puppy")
    # The demo's open dogs are signed: their first competes, whatever else is still to come.
    expect(award(page, "CACIB, dogs").locator(".tile")).to_have_count(1)
    award(page, "CACIB, bitches").get_by_text("Another number").tap()
    expect(award(page, "CACIB, bitches").locator(".another .tile").first).to_be_visible()
    assert violations(page) == []
    assert page.evaluate(SMALL_TARGETS) == []
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_a_change_after_the_signature_waits_in_sight_for_a_new_one(browser, fresh_site):
    page = a_page(browser, fresh_site, "tablet", "judge")
    page.locator(".programme .class", has_text="Hovawart: awards").tap()
    first = award(page, "CACIB, dogs").locator(".tile").first
    number = first.locator(".number").inner_text()
    first.tap()
    expect(page.locator(".awards .foot")).to_contain_text("1 of ")
    page.get_by_role("button", name="Sign the awards").tap()
    expect(page.locator(".signing")).to_contain_text("Awards signed")
    award(page, "CACIB, dogs").get_by_role("button", name="Withheld").tap()
    state = award(page, "CACIB, dogs").locator("h4 .state")
    expect(state).to_have_text(f"number {number}; withheld waits for the signature")
    page.get_by_role("button", name="Sign the awards again").tap()
    expect(state).to_have_text("withheld")
