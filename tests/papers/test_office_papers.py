"""The office's papers, read back: nothing is missing, no class is torn apart, a judge's paper names no dog."""

import re
from datetime import date

import pytest

from ringside.papers.absentees import absentees_pdf
from ringside.papers.catalogue import catalogue_pdf, index_of_exhibitors
from ringside.papers.hand_sheets import hand_sheets_pdf
from ringside.papers.judges_book import judges_book_pdf
from ringside.papers.programme import BreedList, ClassList, Exhibit, Programme, SheetForm
from ringside.papers.ring_sheets import ring_sheets_pdf
from ringside.papers.show_results import show_results_pdf
from tests.papers import reading
from tests.papers.programmes import FORM, LONG_NAME, exhibit, programme

PAPERS = {
    "catalogue": catalogue_pdf, "ring sheets": ring_sheets_pdf, "judges' books": judges_book_pdf,
    "judge's sheets": hand_sheets_pdf, "absentees": absentees_pdf, "results": show_results_pdf,
}  # fmt: skip
NUMBERS_ONLY = ("ring sheets", "judges' books", "judge's sheets")
SHOW = programme(30, 300)


@pytest.fixture(scope="module", params=["A4", "letter"])
def size(request):
    return request.param


@pytest.mark.parametrize("name", PAPERS)
def test_every_paper_of_300_dogs_is_sound_with_its_fonts_inside_and_says_page_n_of_m(name, size):
    printed = PAPERS[name](SHOW, size)
    reading.check(printed)
    assert all(reading.fonts(printed).values())
    for page in reading.pages(printed):
        assert re.search(r"Page \d+ of \d+", page)
        assert "Meadow Show: " in page
        assert "13 and 14 June 2026" in page


@pytest.mark.parametrize("name", ["catalogue", "ring sheets", "judges' books", "judge's sheets", "results"])
def test_every_number_is_printed_once_in_its_place(name):
    words = reading.text(PAPERS[name](SHOW)).split()
    assert [number for number in range(1, 301) if str(number) not in words] == []


def test_the_catalogue_names_every_dog_with_parents_breeder_and_owner():
    text = reading.text(catalogue_pdf(SHOW))
    for _, _, dog in SHOW.exhibits():
        assert f"{dog.number} {dog.name} {dog.studbook}, born 3 March 2024. {dog.sire} × {dog.dam}." in text
        assert f"Breeder: {dog.breeder}. Owner: {dog.owners[0]}" in text


def test_the_catalogue_runs_in_order_of_groups_breeds_and_classes():
    text = reading.text(catalogue_pdf(SHOW))
    places = [text.index(f"{breed.name} {breed.dogs} dogs") for breed in SHOW.breeds]
    assert places == sorted(places)
    first = text[places[0] : places[1]]
    classes = [first.index(one.title) for one in SHOW.breeds[0].classes]
    assert classes == sorted(classes)


def test_the_index_gives_each_exhibitor_all_numbers():
    text = reading.text(catalogue_pdf(SHOW))
    index = text[text.index("Index of exhibitors") :]
    for owner, numbers in index_of_exhibitors(SHOW):
        assert f"{owner} {', '.join(numbers)}" in index


@pytest.mark.parametrize("name", ["catalogue", "ring sheets", "judges' books", "results"])
def test_no_class_is_torn_apart_by_the_end_of_a_page(name, size):
    classes = [
        ClassList("Open class", sex, [exhibit(n) for n in range(start, start + 8)], ("Excellent",), True)
        for start, sex in ((5001, "dog"), (5011, "bitch"), (5021, "dog"), (5031, "bitch"), (5041, "dog"))
    ]
    breeds = [BreedList("Group 1", f"Breed {at}", "Judge", "Ring 1", None, [one]) for at, one in enumerate(classes)]
    pages = reading.pages(PAPERS[name](Programme("Meadow Show", "13 June 2026", breeds), size))
    pages = [page.split("Index of exhibitors")[0] for page in pages]
    for one in classes:
        holding = {at for at, page in enumerate(pages) for dog in one.exhibits if dog.number in page.split()}
        assert len(holding) == 1


def test_the_foot_names_the_breeds_of_its_page():
    feet = [re.findall(r"Breed \w+ of the foot", page) for page in reading.pages(hand_sheets_pdf(_footed()))]
    assert feet == [["Breed a of the foot"] * 2, ["Breed b of the foot"] * 2]


def _footed() -> Programme:
    breeds = [
        BreedList(
            "Group 1", f"Breed {at} of the foot", "Judge", "Ring 1", None, [ClassList("Open", "dog", [exhibit(1)])]
        )
        for at in "ab"
    ]
    return Programme("Meadow Show", "13 June 2026", breeds)


def test_a_class_longer_than_a_page_repeats_its_headings():
    one = ClassList("Open class", "dog", [exhibit(n) for n in range(1, 91)])
    breed = BreedList("Group 1", "Breed", "Judge", "Ring 1", None, [one])
    pages = reading.pages(ring_sheets_pdf(Programme("Meadow Show", "13 June 2026", [breed])))
    assert len(pages) > 2
    assert all("Present Absent Grade" in " ".join(page.split()) for page in pages)


@pytest.mark.parametrize("name", NUMBERS_ONLY)
def test_what_is_printed_for_the_ring_carries_numbers_only(name):
    """The federation's regulations keep the catalogue from the judge (Italian edition, p. 8): no dog, no owner."""
    text = reading.text(PAPERS[name](SHOW))
    for _, _, dog in SHOW.exhibits():
        for secret in (dog.name, dog.sire, dog.dam, dog.breeder, dog.studbook, *dog.owners):
            assert secret not in text


def test_a_judges_sheet_has_a_page_a_dog_with_every_point_and_question():
    pages = reading.pages(hand_sheets_pdf(programme(2, 6)))
    assert len(pages) == 6
    for page in pages:
        flat = " ".join(page.split())
        assert all(scale.name in flat for scale in FORM.scales)
        assert all(name in flat for name, _ in FORM.questions)
        assert "[ ] Excellent" in flat
        assert "27 months old" in flat


def test_each_judge_has_a_book_of_their_own_with_the_awards():
    text = reading.text(judges_book_pdf(SHOW))
    for judge in {breed.judge for breed in SHOW.breeds}:
        assert f"Judge's book, {judge}" in text
    assert text.count("Best of breed") == len(SHOW.breeds)


def test_only_dogs_that_were_not_there_are_absent_and_the_word_is_kept():
    dogs = [exhibit(1), exhibit(2, presence="absent"), exhibit(3, presence="excused"), exhibit(5)]
    breed = BreedList("Group 1", "Breed", "Judge", "Ring 1", None, [ClassList("Open class", "dog", dogs)])
    gone = (("Breed", "Open class, dogs", exhibit(7)),)
    text = reading.text(absentees_pdf(Programme("Meadow Show", "13 June 2026", [breed], gone)))
    assert f"2 {dogs[1].name} Breed, Open class, dogs absent" in text
    assert f"3 {dogs[2].name} Breed, Open class, dogs excused" in text
    assert f"{gone[0][2].name} Breed, Open class, dogs withdrawn" in text
    assert dogs[0].name not in text
    assert dogs[3].name not in text


def test_results_print_places_first_and_name_the_classes_still_to_come():
    dogs = [exhibit(1, place=None, grade="Good"), exhibit(2, place=1), exhibit(3, place=None, presence="absent")]
    classes = [ClassList("Open class", "dog", dogs, (), True), ClassList("Junior class", "dog", [exhibit(9)])]
    breed = BreedList("Group 1", "Breed", "Judge", "Ring 1", "", classes)
    text = reading.text(show_results_pdf(Programme("Meadow Show", "13 June 2026", [breed])))
    assert text.index(dogs[1].name) < text.index(dogs[0].name)
    assert "absent" in text
    assert text.index("Not published when this was printed") < text.index("Breed, Junior class, dogs")
    assert exhibit(9).name not in text


def test_results_print_the_published_awards_after_the_classes():
    one = ClassList("Open class", "dog", [exhibit(1, place=1)], (), True)
    given = (("Best of breed", "1", exhibit(1).name),)
    breed = BreedList("Group 1", "Breed", "Judge", "Ring 1", None, [one], given=given)
    text = reading.text(show_results_pdf(Programme("Meadow Show", "13 June 2026", [breed])))
    assert f"Awards Best of breed 1 {exhibit(1).name}" in text


@pytest.mark.parametrize("name", PAPERS)
def test_long_names_wrap_and_an_empty_show_prints(name, size):
    dog = exhibit(1, name=LONG_NAME.strip(), owners=(LONG_NAME.strip(),), presence="present")
    breed = BreedList("Group 1", LONG_NAME, LONG_NAME, "Ring 1", date(2026, 6, 13),
                      [ClassList(LONG_NAME[:90], "dog", [dog], (LONG_NAME[:60],) * 6, True)],
                      {"dog": SheetForm(FORM.scales, ((LONG_NAME[:30], (LONG_NAME[:80],) * 4),))})  # fmt: skip
    printed = PAPERS[name](Programme("Meadow Show", "13 June 2026", [breed]), size)
    if name in ("catalogue", "results"):
        assert " ".join(LONG_NAME.split()) in reading.text(printed)
    assert reading.pages(PAPERS[name](Programme("Meadow Show", "13 June 2026", []), size))


def test_a_dog_without_papers_shows_the_gap():
    bare = Exhibit("1", "Rex")
    breed = BreedList("Group 1", "Breed", "", "", None, [ClassList("Open class", "dog", [bare])])
    text = reading.text(catalogue_pdf(Programme("Meadow Show", "", [breed])))
    assert "sire not named × dam not named. Breeder: not named. Owner: not named" in text
    assert "no judge yet" in text
