"""A small show from an empty site to the exhibitor's paper, by the browser alone: nothing is prepared, all sign in."""

import os
import re
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pypdf
import pytest
from playwright.sync_api import Page, expect

from tests.served import Site, unprepared

pytestmark = pytest.mark.browser

TODAY = datetime.now(tz=UTC).date()
SHOW_DAY = TODAY + timedelta(days=3)
SECRETARY, OWNER = "secretary@larkmoor.example", "owner@larkmoor.example"
BREEDS = {"Boxer": ("Jo Finch", "1"), "Hovawart": ("Kim Wren", "2")}
# Name, breed, sex, class, age in days. Everybody is invented.
DOGS = (
    ("Alder of Larkmoor", "Boxer", "dog", "open", 1200),
    ("Birch of Larkmoor", "Boxer", "dog", "open", 1300),
    ("Cedar of Larkmoor", "Boxer", "bitch", "junior", 400),
    ("Damson of Larkmoor", "Hovawart", "bitch", "open", 1100),
)
REMARK = "A dog of fine outline who never stops offering himself."


@pytest.fixture
def empty_site(tmp_path):
    """A laptop on a show ground before anybody came: the database made, one address that may start shows."""
    with unprepared(tmp_path, os.environ.get("BROWSER_DATABASE")) as site:
        site.environment |= {"DEMO": "", "FIELD": "1"}
        site.manage("prepare")
        site.manage("first_account", SECRETARY)
        site.start()
        yield site


def test_a_small_show_goes_from_set_up_to_the_exhibitors_paper(sized, empty_site):
    office = sized("desk", empty_site.address)
    sign_in(office, empty_site, SECRETARY)
    make_show(office)
    for breed in BREEDS:
        appoint(office, breed)
    enter_dogs(office)
    number = fix_numbers(office)
    claim_code = cards_of(office)[number]

    tablet = sized("tablet", empty_site.address)
    pair(office, tablet)
    judge(tablet, number)
    publish(office)

    phone = sized("phone", empty_site.address)
    claim(phone, empty_site, number, claim_code)
    words = paper_of(phone)
    assert "Alder of Larkmoor" in words
    assert "Excellent, placed first" in words
    assert REMARK in words
    assert "Judge: Jo Finch" in words


def letter_code(site: Site, ask) -> str:
    """The code in the letter that asking sends: a site without a mail server prints its letters."""
    before = site.printed.stat().st_size
    ask()
    letter = site.printed.read_bytes()[before:].decode()
    [code] = re.findall(r"Your code is\s+(\S+)", letter)
    return str(code)


def sign_in(page: Page, site: Site, email: str) -> None:
    page.goto("/")
    page.get_by_role("link", name="Sign in with a code by e-mail").click()
    page.get_by_label("Email").fill(email)
    type_code(page, site, "Send me a code")


def type_code(page: Page, site: Site, button: str) -> None:
    def ask() -> None:
        page.get_by_role("button", name=button).click()
        expect(page.locator("h1")).to_have_text("Your code")

    page.get_by_label("Code").fill(letter_code(site, ask))
    page.get_by_role("button", name="Sign in").click()
    expect(page.locator("h1")).not_to_have_text("Your code")


def make_show(page: Page) -> None:
    page.goto("/office/")
    page.get_by_role("link", name="Make a show").click()
    page.get_by_label("Name of the show").fill("Larkmoor Open Show")
    page.get_by_label("Place").fill("Larkmoor Green")
    for label, day in (("First day", SHOW_DAY), ("Last day", SHOW_DAY), ("Entries open on", TODAY - timedelta(days=9)),
                       ("Entries close on", TODAY + timedelta(days=1))):  # fmt: skip
        page.get_by_label(label).fill(day.isoformat())
    page.get_by_role("button", name="Make the show").click()
    # Nothing typed is lost, and no governing body is chosen for the secretary.
    expect(page.locator("main")).to_contain_text("Rules: This field is required.")
    page.get_by_label("Rules").select_option("fci")
    page.get_by_role("button", name="Make the show").click()
    expect(page.locator(".messages")).to_contain_text("Next: give each breed its judge, ring and day.")
    page.get_by_role("link", name="Choose the classes").click()
    page.get_by_label("Minor puppy").uncheck()
    page.get_by_role("button", name="Save").click()
    expect(page.locator("main")).to_contain_text("7 classes are offered.")


def appoint(page: Page, breed: str) -> None:
    judge, ring = BREEDS[breed]
    form = page.locator("form[action$='/appoint/']")
    if not form.is_visible():
        page.get_by_text("Give a breed its judge, ring and day").click()
    form.get_by_label("Breed").select_option(label=breed)
    form.get_by_label("Judge", exact=True).fill(judge)
    form.get_by_label("Judge's e-mail").fill(f"{judge.split()[0].lower()}@larkmoor.example")
    form.get_by_label("Ring").fill(ring)
    form.get_by_role("button", name="Appoint").click()
    expect(page.locator(".messages")).to_contain_text(f"{judge} judges this breed in Ring {ring}.")


def enter_dogs(page: Page) -> None:
    page.get_by_role("link", name="Entries", exact=True).click()
    page.get_by_role("link", name="Enter a dog").click()
    for at, (name, breed, sex, code, days) in enumerate(DOGS):
        texts = {
            "Registered name": name, "Breed": breed, "Sex": sex, "Class": code, "Owner": "Ida Vale",
            "Date of birth": (SHOW_DAY - timedelta(days=days)).isoformat(), "Studbook number": f"LM {at:03}",
            "Microchip": f"27609810000000{at}", "Sire": "Sol", "Dam": "Luna", "Breeder": "Fay Quill",
        }  # fmt: skip
        for label, text in texts.items():
            page.get_by_label(label, exact=True).fill(text)
        page.get_by_role("button", name="Enter, and another").click()
        # The address is missing: said once, no hindrance.
        expect(page.locator("main")).to_contain_text("press again to take the entry")
        page.get_by_role("button", name="Enter, and another").click()
        expect(page.locator(".messages")).to_contain_text(name)


def fix_numbers(page: Page) -> str:
    """The catalogue number of the first dog."""
    page.get_by_role("link", name="Entries", exact=True).first.click()
    page.get_by_role("button", name="Give 4 catalogue numbers").click()
    rows = page.locator("#entry-rows tbody tr")
    expect(rows.locator("td").first).to_have_text("1")
    assert rows.locator("td:first-child").all_inner_texts() == ["1", "2", "3", "4"]
    return rows.filter(has_text=DOGS[0][0]).locator("td").first.inner_text()


def cards_of(page: Page) -> dict[str, str]:
    """The claim code on each number card, as it is printed for owners without an address."""
    page.get_by_role("link", name="Numbers and papers").click()
    with page.expect_download() as download:
        page.get_by_role("button", name="A4 Number cards").click()
    return codes_on(download.value.path())


def codes_on(path: Path) -> dict[str, str]:
    words = " ".join(" ".join(page.extract_text() for page in pypdf.PdfReader(path).pages).split())
    found = re.findall(r"([A-Z0-9]{4} [A-Z0-9]{4})", words)
    assert len(found) == len(DOGS), words
    return {str(number): code for number, code in enumerate(found, 1)}


def pair(office: Page, tablet: Page) -> None:
    office.get_by_role("link", name="Show day", exact=True).click()
    office.get_by_label("Ring", exact=True).select_option(label="1")
    office.get_by_label("Role").select_option(label="judge")
    office.get_by_role("button", name="Show a code").click()
    code = office.locator(".code").inner_text()
    tablet.goto("/ring/pair/")
    tablet.get_by_label("Code").fill(code)
    tablet.get_by_role("button", name="Work in this ring with this tablet").tap()
    expect(tablet.locator(".programme .class").first).to_be_visible()


def judge(page: Page, best: str) -> None:
    """The open class of the boxer dogs: marks, grades, words, places; results and critiques signed."""
    page.locator(".programme .class", has_text="Boxer, dogs, open class").tap()
    tiles = page.locator(".tiles .tile")
    expect(tiles).to_have_count(2)
    for at in range(2):
        tiles.nth(at).tap()
        is_best = tiles.nth(at).locator(".number").inner_text() == best
        for point, stop in (("croup", 4 if is_best else 5), ("topline", 3), ("reach", 3 if is_best else 2)):
            page.locator(f"#point-{point} .stop").nth(stop).tap()
        page.locator("#point-bite .option", has_text="scissor").tap()
        page.locator(".grade", has_text=re.compile("^Excellent$" if is_best else "^Very Good$")).tap()
        if is_best:
            page.get_by_label("In your own words").fill(REMARK)
        expect(tiles.nth(at).locator(".state")).to_have_text("graded")
    page.get_by_role("button", name="Line-up").tap()
    lined = page.locator(".lineup .tile")
    lined.filter(has=page.get_by_text(best, exact=True)).tap()
    expect(page.locator(".order .place")).to_have_count(1)
    lined.filter(has_not=page.get_by_text(best, exact=True)).tap()
    expect(page.locator(".order .place")).to_have_count(2)
    page.get_by_role("button", name="Sign the results of this class").tap()
    expect(page.locator(".signing")).to_contain_text("Results signed")
    page.get_by_role("button", name="Sign 2 critiques").tap()
    expect(page.locator(".signing")).to_contain_text("All critiques of this class are signed.")
    expect(page.locator("#status")).to_have_text("Everything is on the server")


def publish(page: Page) -> None:
    page.get_by_role("link", name="Results", exact=True).first.click()
    page.get_by_role("link", name="Boxer, open class, dogs").click()
    page.get_by_role("button", name="Publish this class").click()
    expect(page.locator(".messages")).to_contain_text("Exhibitors can read their critiques now")


def claim(page: Page, site: Site, number: str, code: str) -> None:
    page.goto("/claim/")
    page.get_by_label("Number on the card").fill(number)
    page.get_by_label("Claim code").fill(code)
    page.get_by_label("Your e-mail address").fill(OWNER)
    page.get_by_role("button", name="Go on").tap()
    type_code(page, site, f"Send the code to {OWNER}")
    page.get_by_role("button", name="This is my dog").tap()
    expect(page.locator(".messages")).to_contain_text("Alder of Larkmoor is among your dogs now.")


def paper_of(page: Page) -> str:
    page.get_by_text("Read the critique").tap()
    with page.expect_download() as download:
        page.get_by_role("link", name="PDF, English").tap()
    return " ".join(" ".join(one.extract_text() for one in pypdf.PdfReader(download.value.path()).pages).split())
