"""One dog's sheet: folded sections, teeth, numbers, points of one sex, and an undo that says of whom."""

import pytest
from playwright.sync_api import expect

pytestmark = pytest.mark.browser


def test_on_a_phone_one_section_is_open_and_its_last_mark_opens_the_next(in_class):
    page = in_class("phone", "Hovawart, bitches, puppy")
    opened = page.locator("details.section[open]")
    expect(opened).to_have_count(1)
    expect(opened).to_have_id("section-general")
    for row in page.locator("#section-general .row:has(.stops)").all():
        row.locator(".stop").nth(3).tap()
    expect(page.locator("#section-head")).to_have_attribute("open", "")
    expect(opened).to_have_count(1)
    expect(page.locator("#section-general .told")).to_have_text("2 as asked")
    expect(page.locator("#section-head > summary")).to_be_in_viewport()


def test_the_chart_holds_the_42_teeth_of_a_dog(in_class):
    """Permanent teeth of the dog: I3/3 C1/1 P4/4 M2/3, 42 in all. Source: any textbook of veterinary anatomy."""
    page = in_class("tablet", "Hovawart, bitches, intermediate")
    page.locator(".teeth summary").tap()
    expect(page.locator(".tooth")).to_have_count(42)
    page.get_by_role("button", name="405, lower right P1").tap()
    page.get_by_role("button", name="305, lower left P1").tap()
    expect(page.locator(".missing-teeth")).to_have_text("missing: 305, 405")
    page.get_by_role("button", name="405, lower right P1").tap()
    expect(page.locator(".missing-teeth")).to_have_text("missing: 305")


def test_a_number_that_cannot_be_is_said_in_words_and_stays_as_typed(in_class):
    page = in_class("tablet", "Hovawart, bitches, veteran")
    height = page.get_by_label("height at withers in cm")
    height.fill("640")
    height.blur()
    expect(page.locator("#number-height-wrong")).to_contain_text("Give")
    expect(height).to_have_value("640")
    height.fill("64,5")
    height.blur()
    expect(page.locator("#number-height-wrong")).to_be_empty()
    expect(page.locator("#section-size .told")).to_have_text("height at withers 64.5 cm")


@pytest.mark.parametrize(("name", "count"), [("Hovawart, dogs, working", 1), ("Hovawart, bitches, veteran", 0)])
def test_testicles_are_asked_of_dogs_only(in_class, name, count):
    page = in_class("tablet", name)
    expect(page.locator("#point-testicles")).to_have_count(count)


def test_undo_says_of_which_dog_it_takes_something_back(in_class):
    page = in_class("tablet", "Bernese Mountain Dog, dogs, junior")
    first = page.locator(".tiles .number").first.inner_text()
    page.locator("#point-stop .stop").nth(5).tap()
    expect(page.locator(".undo")).to_have_text("Undo stop")
    page.locator(".tiles .tile").nth(1).tap()
    expect(page.locator(".undo")).to_have_text(f"Undo stop of {first}")
    page.locator(".undo").tap()
    expect(page.locator(".undo")).to_be_disabled()
    page.locator(".tiles .tile").first.tap()
    expect(page.locator("#point-stop .stop[aria-pressed=true]")).to_have_count(0)


def test_a_dog_marked_absent_can_come_all_the_same(in_class):
    page = in_class("tablet", "Bernese Mountain Dog, dogs, working")
    page.get_by_role("button", name="Absent", exact=True).tap()
    expect(page.locator(".tile .state")).to_have_text("absent")
    page.get_by_role("button", name="Absent", exact=True).tap()
    expect(page.locator(".tile .state")).to_have_text("in hand")


# A page that dies is told nothing, and the two seconds after its last letter never pass.
DIES = """
  const { addEventListener, setTimeout } = window;
  window.addEventListener = (name, ...more) => name !== "pagehide" && addEventListener.call(window, name, ...more);
  window.setTimeout = (work, wait, ...more) => (wait === 2000 ? 0 : setTimeout(work, wait, ...more));
"""
DRAFTED = r"""async (words) => {
  const ask = (request) => new Promise((done) => { request.onsuccess = () => done(request.result); });
  const database = await ask(indexedDB.open(`ring-${location.pathname.match(/ring.(\d+)/)[1]}`));
  const drafts = () => ask(database.transaction("values").objectStore("values").getAll());
  while (!(await drafts()).some(({ value }) => value === words)) await new Promise((done) => setTimeout(done, 50));
  database.close();
}"""


def test_what_was_typed_behind_words_that_were_kept_comes_back_when_the_tablet_dies(in_class):
    page = in_class("tablet", "Hovawart, dogs, working")
    page.add_init_script(DIES)
    page.reload()
    remark = page.get_by_label("In your own words")
    remark.fill("Good head.")
    remark.blur()
    expect(page.locator(".typed", has=remark)).to_have_attribute("data-set", "yes")
    remark.press("End")
    remark.press_sequentially(" Sound mover.")
    page.evaluate(DRAFTED, "Good head. Sound mover.")
    page.reload()
    expect(remark).to_have_value("Good head. Sound mover.")
    expect(page.locator("#status")).to_have_text("Everything is on the server")


def test_a_reason_that_is_written_folds_to_itself_when_the_dog_comes_back(in_class):
    page = in_class("tablet", "Bernese Mountain Dog, dogs, champion")
    page.locator(".grade", has_text="Cannot be judged").tap()
    expect(page.locator(".caution")).to_be_visible()
    page.get_by_label("The reason, as it will stand in the report").fill("Lame on the near fore.")
    page.get_by_role("button", name="Line-up").tap()
    page.get_by_role("button", name="Back to the dogs").tap()
    expect(page.locator(".why > summary")).to_contain_text("Lame on the near fore.")
    expect(page.locator(".caution")).to_be_hidden()


# Words that stand on two lines without a hyphen where they part.
BROKEN = """
() => {
  const words = document.createTreeWalker(document.querySelector(".sheet"), NodeFilter.SHOW_TEXT);
  const broken = [];
  while (words.nextNode()) {
    for (const { 0: word, index } of words.currentNode.data.matchAll(/[\\p{L}\\d]+/gu)) {
      const range = document.createRange();
      range.setStart(words.currentNode, index);
      range.setEnd(words.currentNode, index + word.length);
      const lines = new Set([...range.getClientRects()].filter(({ width }) => width).map(({ top }) => top));
      if (lines.size > 1) broken.push(word);
    }
  }
  return broken;
}
"""


@pytest.mark.parametrize("size", ["tablet", "phone"])
@pytest.mark.parametrize("breed", ["Hovawart, dogs, working", "Bernese Mountain Dog, dogs, junior"])
def test_every_english_word_of_the_sheet_stands_in_one_piece(in_class, size, breed):
    page = in_class(size, breed)
    page.locator("details.section").evaluate_all("sections => sections.forEach((section) => { section.open = true; })")
    assert page.evaluate(BROKEN) == []
