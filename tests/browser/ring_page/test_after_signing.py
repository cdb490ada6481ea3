"""What the judge changes after signing waits in sight: what counts stays, what will count is marked."""

import pytest
from playwright.sync_api import expect

pytestmark = pytest.mark.browser

SIGNED = "Hovawart, dogs, open class"


def test_a_mark_a_choice_and_a_grade_wait_beside_what_is_signed_and_a_second_tap_takes_them_back(in_class):
    page = in_class("tablet", SIGNED)
    stop = page.locator("#point-stop .stop").nth(6)
    bite = page.locator("#point-bite .option")
    stop.tap()
    bite.nth(1).tap()
    expect(stop).to_have_attribute("data-waits", "to-count")
    expect(page.locator("#point-stop .said")).to_have_text("waits: far: abrupt")
    expect(bite.nth(0)).to_have_attribute("data-waits", "to-go")
    expect(bite.nth(0)).to_have_attribute("aria-pressed", "true")
    expect(page.locator(".of-critique")).to_contain_text("2 later changes wait")
    expect(page.locator(".of-results")).to_be_hidden()
    stop.tap()
    expect(page.locator("#point-stop .said")).to_have_text("waits: nothing")

    grades = page.locator(".grade")
    grades.nth(1).tap()
    expect(grades.nth(1)).to_have_attribute("data-waits", "to-count")
    expect(grades.nth(0).locator("input")).to_be_checked()
    expect(page.locator(".of-results")).to_contain_text("1 later change waits")
    grades.nth(0).tap()
    expect(page.locator(".grade[data-waits]")).to_have_count(0)


def test_words_that_wait_stay_in_their_field_and_typing_back_what_is_signed_takes_them_back(in_class):
    page = in_class("tablet", SIGNED)
    page.locator(".tiles .tile").nth(1).tap()
    page.locator(".tiles .tile").nth(1).and_(page.locator("[aria-current]")).wait_for()
    remark = page.locator("#typed-remark")
    signed = remark.input_value()
    remark.fill("Better than I first thought.")
    remark.blur()
    expect(page.locator(".of-critique")).to_contain_text("1 later change waits")
    expect(page.locator(".typed", has=remark)).to_have_attribute("data-waits", "yes")
    expect(remark).to_have_value("Better than I first thought.")
    page.locator(".tiles .tile").first.tap()
    page.locator(".tiles .tile").nth(1).tap()
    expect(remark).to_have_value("Better than I first thought.")
    remark.focus()
    remark.blur()
    expect(page.locator(".of-critique")).to_contain_text("1 later change waits")
    remark.fill(signed)
    remark.blur()
    expect(page.locator(".of-critique")).to_contain_text("2 later changes wait")
    page.get_by_role("button", name="Sign it again").tap()
    expect(page.locator(".of-critique")).to_be_hidden()
    expect(remark).to_have_value(signed)


def test_a_text_that_waits_is_written_on_and_not_composed_anew(in_class):
    page = in_class("tablet", SIGNED)
    page.locator(".tiles .tile").nth(2).tap()
    page.get_by_role("button", name="Write it myself").tap()
    own = page.get_by_label("Your own text, English")
    own.fill("A dog I would take home.")
    page.locator(".sheet h2").tap()
    expect(page.get_by_role("button", name="Write it myself")).to_be_hidden()
    expect(own).to_have_value("A dog I would take home.")


def test_a_grade_that_waits_is_not_signed_without_the_reason_that_it_needs(in_class):
    page = in_class("tablet", SIGNED)
    page.context.set_offline(True)  # the grade stays on this tablet, away from the other tests of the class
    page.locator(".tiles .tile").nth(3).tap()
    page.locator(".grade", has_text="Disqualified").tap()
    page.get_by_role("button", name="Line-up").tap()
    number = page.locator(".choices .tile .number").nth(3).inner_text()
    expect(page.locator(".signing .missing")).to_have_text(f"The reason is missing: number {number}.")
    expect(page.get_by_role("button", name="Sign the results again")).to_be_disabled()


def test_places_change_step_by_step_before_they_are_signed_again(in_class):
    page = in_class("tablet", SIGNED)
    page.get_by_role("button", name="Line-up").tap()
    numbers = page.locator(".order .number")
    expect(numbers).to_have_count(4)
    before = numbers.all_inner_texts()
    page.get_by_role("button", name=f"Number {before[0]} one place down").tap()
    expect(numbers.first).to_have_text(before[1])
    page.get_by_role("button", name=f"Number {before[0]} one place down").tap()
    expect(numbers).to_have_text([before[1], before[2], before[0], before[3]])
    expect(page.locator(".lineup h3").first).to_have_text("Places, waiting for your signature")
    page.get_by_role("button", name="Sign the results again").tap()
    expect(page.locator(".lineup h3").first).to_have_text("Places")
    expect(numbers).to_have_text([before[1], before[2], before[0], before[3]])


def test_the_dog_just_left_takes_no_finger_while_the_next_one_opens(in_class):
    page = in_class("tablet", "Bernese Mountain Dog, dogs, open class")
    under_the_finger = """() => {
      const grade = document.querySelector(".grade");
      grade.scrollIntoView();
      const { x, y } = grade.getBoundingClientRect();
      const takes = () => grade.contains(document.elementFromPoint(x + 8, y + 8));
      const before = takes();
      document.querySelectorAll(".tiles .tile")[1].click();
      return [before, takes()];
    }"""
    assert page.evaluate(under_the_finger) == [True, False]
    page.locator(".grade", has_text="Excellent").tap()
    expect(page.locator(".tile .state").nth(1)).to_have_text("graded")
    expect(page.locator(".tile .state").first).not_to_have_text("graded")


def test_a_finding_stands_beside_the_number_it_speaks_of(in_class):
    page = in_class("tablet", "Bernese Mountain Dog, dogs, open class")
    page.locator(".grade", has_text="Good").last.tap()
    expect(page.locator(".tile .state").first).to_have_text("graded")
    page.locator(".tiles .tile").nth(1).tap()
    page.locator(".grade", has_text="Excellent").tap()
    page.get_by_role("button", name="Line-up").tap()
    page.locator(".lineup .tile").nth(0).tap()
    page.locator(".lineup .tile").nth(1).tap()
    rows = page.locator(".order li:has(.place)")
    expect(rows.nth(0).locator(".beside")).to_contain_text("do not go with their places")
    expect(rows.nth(1).locator(".beside")).not_to_contain_text("do not go with their places")
    expect(page.locator(".findings")).not_to_contain_text("do not go with their places")
    expect(page.get_by_role("button", name="Sign the results of this class")).to_be_visible()
