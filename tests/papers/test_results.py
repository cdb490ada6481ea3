"""The results of a class on paper."""

from hypothesis import given
from hypothesis import strategies as st

from ringside.papers.results import ResultLine, results_pdf
from tests.papers import reading
from tests.papers.samples import results


def test_results_are_read_back_in_their_order():
    printed = reading.text(results_pdf(results()))
    parts = [
        "Hovawart, open class, bitches",
        "Judge: Marit Eikeland",
        "Place",
        "1 201 Dog number 1",
        "4 204 Dog number 4",
    ]
    found = [printed.find(part) for part in parts]
    assert -1 not in found
    assert found == sorted(found)


def test_a_long_class_goes_on_with_its_headings_on_every_page():
    pages = reading.pages(results_pdf(results(120)))
    assert len(pages) > 1
    assert all("Grade" in page for page in pages)


def test_a_reason_longer_than_a_page_is_printed_to_its_end():
    words = [f"reason{number}" for number in range(900)]
    line = ResultLine("", "7", "Rex", "Disqualified", " ".join(words))
    read = reading.text(results_pdf(results(lines=[line])))
    assert [word for word in words if word not in read] == []


def test_the_results_are_a_sound_file_with_their_fonts_inside():
    printed = results_pdf(results())
    assert all(reading.fonts(printed).values())
    reading.check(printed)


anything = st.text(st.characters(exclude_categories=()), max_size=300)


@given(anything, anything)
def test_no_name_or_reason_stops_the_press(dog, reason):
    assert reading.pages(results_pdf(results(lines=[ResultLine("1", "1", dog, "Excellent", reason)], title=dog)))
