"""Three journeys through the real thing, each from the front door to the end of its job."""

import os
import re
from pathlib import Path

import pypdf
import pytest
from playwright.sync_api import Page, expect

from tests.entry_files import club_export

pytestmark = pytest.mark.browser

PICTURES = Path(__file__).with_name("pictures")
# Eighteen marks as a judge sets them: mostly as asked, some a little too little or too much.
MARKS = [0, 0, -1, 0, 0, 1, 0, 0, 0, 2, 0, 0, -1, 0, 0, 0, 1, 0]


def keep_picture(page: Page, name: str) -> None:
    """The pictures of README are made here, where RINGSIDE_PICTURES is set."""
    if os.environ.get("RINGSIDE_PICTURES"):
        PICTURES.mkdir(exist_ok=True)
        page.screenshot(path=PICTURES / f"{name}.png")


def enter(page: Page, face: str) -> None:
    page.goto("/")
    page.locator(f"form[action='/demo/{face}/'] button").click()


class Finger:
    """Counts its taps."""

    def __init__(self) -> None:
        self.taps = 0

    def tap(self, locator) -> None:
        locator.tap()
        self.taps += 1


def judge_one_dog(page: Page, grade: str) -> int:
    """Marks, bite and grade of the dog in hand; how many taps it took."""
    finger = Finger()
    rows = page.locator(".row:has(.stops)")
    for index, mark in enumerate(MARKS):
        finger.tap(rows.nth(index).locator(".stop").nth(mark + 3))
    finger.tap(page.locator("#point-bite .option", has_text="scissor"))
    finger.tap(page.locator(".grade", has_text=re.compile(f"^{grade}$")))
    expect(page.locator("#point-bite .option[aria-pressed=true]")).to_have_text("scissor")
    return finger.taps


@pytest.mark.parametrize("size", ["tablet", "landscape"])
def test_the_judge_judges_a_class_places_it_and_signs_it(sized, size):
    page = sized(size)
    enter(page, "judge")
    class_name = {"tablet": "Hovawart, dogs, junior class", "landscape": "Bernese Mountain Dog, dogs, junior class"}[
        size
    ]
    page.locator(".programme .class", has_text=class_name).tap()
    expect(page.locator(".tiles .number")).to_have_count(2)
    numbers = page.locator(".tiles .number").all_inner_texts()
    expect(page.locator(".tiles .state").first).to_have_text("in hand")

    assert judge_one_dog(page, "Excellent") <= 25
    page.locator("#point-reach .praise").tap()
    expect(page.locator("#point-reach .badge")).to_have_text("praised")
    if size == "tablet":
        page.evaluate("scrollTo(0, 0)")
        keep_picture(page, "judge")
    page.get_by_role("button", name="Next dog").tap()
    expect(page.locator(".sheet h2 .number")).to_have_text(numbers[1])
    judge_one_dog(page, "Very Good")
    page.get_by_label("In your own words").fill("Ein Hund mit viel Ausdruck.")
    page.get_by_role("button", name="Line-up").tap()

    page.locator(".lineup .tile").nth(1).tap()
    page.locator(".lineup .tile").nth(0).tap()
    expect(page.locator(".beside").first).to_contain_text("do not go with their places")
    page.get_by_role("button", name=f"Number {numbers[0]} one place up").tap()
    expect(page.locator(".order .number").first).to_have_text(numbers[0])
    expect(page.locator(".lineup")).not_to_contain_text("do not go with their places")
    page.get_by_role("button", name="Sign the results of this class").tap()
    expect(page.locator(".signing")).to_contain_text("Results signed")
    page.get_by_role("button", name="Sign 2 critiques").tap()
    expect(page.locator(".signing")).to_contain_text("All critiques of this class are signed.")
    expect(page.locator("#status")).to_have_text("Everything is on the server")
    page.get_by_role("button", name="Classes").tap()
    expect(page.locator(".programme li", has_text=class_name).locator(".state")).to_have_text("signed")


def test_a_second_tap_clears_a_mark_and_undo_brings_it_back(sized):
    page = sized("tablet")
    enter(page, "judge")
    page.locator(".programme .class", has_text="Hovawart, bitches, junior class").tap()
    stop = page.locator("#point-substance .stop").nth(5)
    stop.tap()
    expect(stop).to_have_attribute("aria-pressed", "true")
    stop.tap()
    expect(stop).to_have_attribute("aria-pressed", "false")
    page.get_by_role("button", name="Undo substance and bone").tap()
    expect(stop).to_have_attribute("aria-pressed", "true")


def test_a_change_after_the_signature_waits_in_sight_until_it_is_signed_again(sized):
    page = sized("tablet")
    enter(page, "judge")
    page.locator(".programme .class", has_text="Hovawart, dogs, open class").tap()
    stop = page.locator("#point-stop .stop").nth(6)
    stop.tap()
    expect(page.locator(".again")).to_contain_text("1 later change waits")
    expect(stop).to_have_attribute("aria-pressed", "false")
    page.get_by_role("button", name="Sign it again").tap()
    expect(stop).to_have_attribute("aria-pressed", "true")
    expect(page.locator(".again")).to_be_hidden()


def test_touching_the_croup_opens_the_croup(sized):
    page = sized("tablet")
    enter(page, "judge")
    page.locator(".programme .class", has_text="Bernese Mountain Dog, dogs, puppy class").tap()
    expect(page.locator(".outline svg")).to_be_visible()
    place = page.evaluate("""async () => {
      const day = await (await fetch("day/")).json();
      const picture = document.querySelector(".outline svg");
      const [x, y] = day.drawings["bernese-mountain-dog"].places.croup;
      const point = new DOMPoint(x, y).matrixTransform(picture.getScreenCTM());
      return [point.x, point.y];
    }""")
    page.touchscreen.tap(*place)
    expect(page.locator("#point-croup .stop").first).to_be_focused()
    expect(page.locator("#point-croup")).to_be_in_viewport()


def test_a_sheet_written_on_the_wrong_dog_changes_numbers_and_undo_takes_it_back(sized):
    page = sized("tablet")
    enter(page, "judge")
    page.locator(".programme .class", has_text="Bernese Mountain Dog, dogs, puppy class").tap()
    expect(page.locator(".tiles .number")).to_have_count(2)
    numbers = page.locator(".tiles .number").all_inner_texts()
    page.locator("#point-stop .stop").nth(5).tap()
    page.locator(".grade", has_text=re.compile("^Promising$")).tap()
    page.locator(".swap summary").tap()
    page.locator(".swap .option", has_text=numbers[1]).tap()
    expect(page.locator("#point-stop .stop").nth(5)).to_have_attribute("aria-pressed", "false")
    expect(page.locator(".tiles .state")).to_have_text(["in hand", "graded"])
    page.get_by_role("button", name=re.compile("^Undo the swap")).tap()
    expect(page.locator("#point-stop .stop").nth(5)).to_have_attribute("aria-pressed", "true")
    expect(page.locator(".tiles .state")).to_have_text(["graded", "waiting"])


def test_a_disqualification_asks_for_its_reason_and_shows_the_caution(sized):
    page = sized("tablet")
    enter(page, "judge")
    page.locator(".programme .class", has_text="Hovawart, bitches, intermediate class").tap()
    page.locator(".grade", has_text="Disqualified").tap()
    expect(page.locator(".caution")).to_contain_text("vet")
    page.get_by_label("The reason, as it will stand in the report").fill("Snapped at the judge.")
    page.get_by_role("button", name="Line-up").tap()
    expect(page.locator(".lineup .tile").first).to_be_disabled()
    expect(page.locator(".missing")).not_to_contain_text("The reason is missing")


def test_marks_are_on_the_tablet_when_it_comes_back(sized):
    page = sized("tablet")
    enter(page, "judge")
    page.locator(".programme .class", has_text="Hovawart, dogs, puppy class").tap()
    page.locator("#point-skull .stop").nth(1).tap()
    expect(page.locator("#point-skull .stop").nth(1)).to_have_attribute("aria-pressed", "true")
    page.reload()
    expect(page.locator("#point-skull .stop").nth(1)).to_have_attribute("aria-pressed", "true")


def test_the_secretary_brings_a_file_in_mends_a_line_and_publishes_a_class(sized, site, tmp_path):
    page = sized("desk")
    enter(page, "secretary")
    page.get_by_role("link", name="Entries", exact=True).click()
    file = tmp_path / "club-export.csv"
    file.write_bytes(club_export())
    page.get_by_label("Entry file").set_input_files(file)
    page.get_by_role("button", name="Read it").click()
    expect(page.locator(".facts")).to_contain_text("semicolon")
    expect(page.locator("tbody")).to_contain_text("did you mean Boxer?")
    page.get_by_role("button", name=re.compile("Take the . good line")).click()
    expect(page.locator(".messages")).to_contain_text("entries were made")
    page.get_by_role("link", name=re.compile("To be mended")).click()
    page.get_by_role("link", name=re.compile("^mend")).first.click()
    page.get_by_label("Breed", exact=True).fill("Boxer")
    page.get_by_role("button", name="Check and keep").click()
    expect(page.locator(".messages")).to_contain_text("can be taken now")
    page.get_by_role("link", name="Entries", exact=True).first.click()
    page.get_by_role("button", name=re.compile("Give . catalogue number")).click()
    expect(page.locator(".messages")).to_contain_text("catalogue number")

    judge_a_small_class(sized)
    page.get_by_role("link", name="Results").click()
    keep_picture(page, "secretary")
    row = page.locator("tr", has_text="Hovawart, working class, dogs")
    expect(row).to_contain_text("ready to publish")
    row.get_by_role("link", name="Hovawart, working class, dogs").click()
    page.get_by_role("button", name="Publish this class").click()
    expect(page.locator(".messages")).to_contain_text("Exhibitors can read their critiques now")
    with page.expect_download() as download:
        page.get_by_role("link", name="Results of the class (PDF)").click()
    text = pypdf.PdfReader(download.value.path()).pages[0].extract_text()
    assert "Hovawart, working class, dogs" in text


def judge_a_small_class(sized) -> None:
    page = sized("tablet")
    enter(page, "judge")
    page.locator(".programme .class", has_text="Hovawart, dogs, working class").tap()
    judge_one_dog(page, "Excellent")
    page.get_by_role("button", name="Line-up").tap()
    page.locator(".lineup .tile").tap()
    page.get_by_role("button", name="Sign the results of this class").tap()
    page.get_by_role("button", name="Sign 1 critique").tap()
    expect(page.locator(".signing")).to_contain_text("All critiques of this class are signed.")
    expect(page.locator("#status")).to_have_text("Everything is on the server")


def test_the_exhibitor_reads_own_dogs_only_and_takes_the_critique_home(sized):
    page = sized("phone")
    enter(page, "exhibitor")
    names = page.locator(".doors .dog-name").all_inner_texts()
    assert len(names) == 2
    page.get_by_text("Read the critique").tap()
    name = page.locator("h1").inner_text()
    expect(page.locator(".result")).to_contain_text("Excellent, placed")
    expect(page.locator(".drawing svg")).to_be_visible()
    keep_picture(page, "exhibitor")
    with page.expect_download() as download:
        page.get_by_role("link", name="PDF, English").tap()
    paper = pypdf.PdfReader(download.value.path())
    # The measured photo of the demo's judged dog has a page of its own.
    text = " ".join(paper.pages[0].extract_text().split())
    assert len(paper.pages) == 2
    assert name in text
    assert " ".join(page.locator(".words p").first.inner_text().split()) in text


def test_the_exhibitor_signs_in_with_a_code_sent_by_mail(sized, site):
    page = sized("phone")
    page.goto("/sign-in/")
    page.get_by_label("Email").fill("exhibitor@alderwick.example")
    page.get_by_role("button", name="Send me a code").tap()
    expect(page.locator("h1")).to_have_text("Your code")
    page.get_by_label("Code").fill("WRONG1")
    page.get_by_role("button", name="Sign in").tap()
    expect(page.locator(".error-text").first).to_be_visible()


def test_a_stranger_finds_no_office_ring_or_critique(sized):
    page = sized("desk")
    enter(page, "exhibitor")
    for address in ("/office/alderwick/", "/office/alderwick/entries/", "/office/alderwick/results/", "/ring/1/"):
        response = page.goto(address)
        assert response is not None
        assert response.status == 404, address
