"""The critique on paper, read back from the file by an independent reader."""

import io

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image
from pypdf import PdfReader
from reportlab import rl_config
from reportlab.lib.pagesizes import A4, LETTER

from ringside.papers.critique import book_of_critiques, critique_pdf, unprintable_in
from tests.papers import reading
from tests.papers.samples import LABELS, WORDS, critique

POLISH = "Zażółć Gęślą Jaźń ze Świętokrzyskich Łąk"
CZECH = "Příliš Žluťoučký Kůň z Ďábelských Ód"
GREEK = "Ξεσκεπάζω την Ψυχοφθόρα Βδελυγμία"
CYRILLIC = "Съешь Ещё Этих Мягких Булок, Їжак Ґанок"
NORDIC = "Blåbærgrød på Ærø & Åland, Þórður"
HUNGARIAN = "Árvíztűrő Tükörfúrógép"


def photo(size: tuple[int, int]) -> bytes:
    target = io.BytesIO()
    Image.linear_gradient("L").resize(size).save(target, "JPEG")
    return target.getvalue()


def test_what_is_printed_is_read_back_in_the_order_of_a_letter():
    paper = critique()
    printed = reading.text(critique_pdf(paper))
    parts = [
        paper.show, paper.day, "Page 1 of 1", paper.dog, *paper.about, *WORDS, "The judge's marks", "too little",
        "croup steep", "Excellent, second place", "Judge: Marit Eikeland", "Judge's signature",
        "governing body's own rules decide", "0123456789abcdef",
    ]  # fmt: skip
    found = [printed.find(part) for part in parts]
    assert -1 not in found, parts[found.index(-1)]
    assert found == sorted(found)


@pytest.mark.parametrize("name", [POLISH, CZECH, GREEK, CYRILLIC, NORDIC, HUNGARIAN])
def test_names_in_the_scripts_of_europe_are_read_back_letter_for_letter(name):
    printed = reading.text(critique_pdf(critique(dog=name, judge=name, remark=name)))
    assert printed.count(name) == 3
    assert unprintable_in(critique(dog=name, judge=name, remark=name)) == []


def test_letters_that_other_fonts_join_are_read_back_apart():
    assert "Affluent fifty-fifth office waffle" in reading.text(
        critique_pdf(critique(dog="Affluent fifty-fifth office waffle"))
    )


def test_an_accent_typed_apart_from_its_letter_is_printed_on_it():
    assert "Čáp" in reading.text(critique_pdf(critique(dog="C\u030ca\u0301p")))


@pytest.mark.parametrize("size", ["A4", "letter"])
def test_25_marks_and_120_words_fit_on_one_page(size):
    assert 110 <= len(" ".join(WORDS).split()) <= 130
    assert len(reading.pages(critique_pdf(critique(25), size))) == 1


def test_a_long_name_a_photo_and_a_check_code_still_fit_on_one_page():
    paper = critique(
        12,
        dog="A" + " Very Long Kennel Name" * 3 + " of Such",
        photo=photo((800, 600)),
        check_url="https://x.example/c/1",
    )
    assert len(reading.pages(critique_pdf(paper))) == 1


def test_a_remark_of_600_words_flows_on_and_loses_nothing():
    words = [f"word{number}" for number in range(600)]
    printed = critique_pdf(critique(remark=" ".join(words)))
    assert len(reading.pages(printed)) > 1
    read = reading.text(printed)
    assert [word for word in words if word not in read] == []


def test_pages_are_numbered_n_of_m_and_each_has_show_and_date():
    pages = reading.pages(critique_pdf(critique(remark="long " * 900)))
    for number, page in enumerate(pages, 1):
        assert f"Page {number} of {len(pages)}" in page
        assert "Summer Show of the Valley Clubs" in page
        assert "14 June 2026" in page


def test_a_line_of_the_text_has_at_most_70_characters():
    (page,) = reading.pages(critique_pdf(critique(0)))
    words = page[page.index(WORDS[0][:20]) : page.index("Excellent, second")]
    assert 60 <= max(map(len, words.splitlines())) <= 70


@pytest.mark.parametrize(("size", "expected"), [("A4", A4), ("letter", LETTER)])
def test_the_page_has_the_size_asked_for(size, expected):
    box = PdfReader(io.BytesIO(critique_pdf(critique(), size))).pages[0].mediabox
    assert (float(box.width), float(box.height)) == pytest.approx(expected, abs=0.01)


@pytest.mark.parametrize("language", sorted(LABELS))
def test_every_language_has_the_same_labels_and_prints(language):
    assert set(LABELS["en"]) == set(LABELS[language])
    printed = critique_pdf(critique(language=language))
    assert LABELS[language]["marks"] in reading.text(printed)
    assert PdfReader(io.BytesIO(printed)).root_object["/Lang"] == language


def test_the_file_says_what_it_is():
    reader = PdfReader(io.BytesIO(critique_pdf(critique(dog=GREEK))))
    assert reader.metadata.title == f"Critique: {GREEK}"
    assert reader.metadata.author == "Marit Eikeland"
    assert reader.metadata.subject == "Summer Show of the Valley Clubs, Lindenau, 14 June 2026"
    assert reader.root_object["/ViewerPreferences"]["/DisplayDocTitle"]


def test_a_french_title_keeps_the_space_before_its_colon():
    reader = PdfReader(io.BytesIO(critique_pdf(critique(language="fr", dog="Rex"))))
    assert reader.metadata.title == "Rapport de jugement\u00a0: Rex"


def test_every_font_is_inside_the_file():
    inside = reading.fonts(critique_pdf(critique(dog=CYRILLIC)))
    assert inside
    assert all(inside.values()), inside


def test_the_slow_coder_of_pictures_is_off():
    assert rl_config.useA85 == 0
    assert b"ASCII85" not in critique_pdf(critique(photo=photo((400, 300))))


def test_the_file_is_sound():
    reading.check(
        critique_pdf(critique(photo=photo((300, 400)), check_url="https://show.example/check/1", remark="x " * 700))
    )


def test_the_same_paper_gives_the_same_bytes():
    assert critique_pdf(critique()) == critique_pdf(critique())


def test_a_paper_without_marks_or_words_is_still_a_paper():
    printed = reading.text(critique_pdf(critique(0, sentences=(), about=())))
    assert "Aurora vom Stillen Grund" in printed
    assert "The judge's marks" not in printed


def test_signs_the_font_lacks_are_shown_as_a_lozenge_and_named_in_the_small_print():
    paper = critique(dog="שלום 犬 Rex")
    assert unprintable_in(paper) == ["ו", "ל", "ם", "ש", "犬"]
    printed = reading.text(critique_pdf(paper))
    assert "◊◊◊◊ ◊ Rex" in printed
    assert "U+05D5 U+05DC U+05DD U+05E9 U+72AC" in printed


def test_a_check_address_is_printed_as_words_beside_its_code():
    assert "https://show.example/check/1" in reading.text(
        critique_pdf(critique(check_url="https://show.example/check/1"))
    )


def test_a_photo_is_in_the_file_and_takes_none_of_the_words():
    printed = critique_pdf(critique(photo=photo((400, 300))))
    assert len(PdfReader(io.BytesIO(printed)).pages[0].images) == 1
    assert " ".join(WORDS) in reading.text(printed)


def test_markup_in_a_name_is_printed_as_typed():
    name = "<b>Rex</b> & <font size=40>Co</font> &lt; <img src='x'/> %s {n}"
    assert name in reading.text(critique_pdf(critique(dog=name, sentences=(name,), show=name)))


anything = st.text(st.characters(exclude_categories=()), max_size=200)


@given(anything, anything, anything, anything)
def test_no_text_whatever_stops_the_press(dog, words, remark, show):
    paper = critique(3, dog=dog, sentences=(words,), remark=remark, show=show, judge=dog, about=(words,), result=remark)
    assert reading.pages(critique_pdf(paper))


latin = st.text(st.sampled_from("<>&\"'/;= abcxyzÄŁžαя"), min_size=1, max_size=60)


@given(latin)
def test_no_text_is_taken_for_markup(words):
    printed = "".join(reading.pages(critique_pdf(critique(0, sentences=(words,)))))
    assert "".join(words.split()) in "".join(printed.split())


def test_a_book_holds_its_critiques_in_order_each_numbered_for_itself():
    papers = (
        critique(5, dog=f"Dog {name}", remark="on " * length)
        for name, length in (("One", 0), ("Two", 900), ("Three", 0))
    )
    printed = book_of_critiques(papers, "Critiques of the day")
    pages = reading.pages(printed)
    assert [page.count("Page 1 of 1") for page in (pages[0], pages[-1])] == [1, 1]
    assert "Page 2 of 2" in pages[2]
    assert [number for number, page in enumerate(pages) if "Dog " in page] == [0, 1, 3]
    reader = PdfReader(io.BytesIO(printed))
    assert [entry.title for entry in reader.outline] == [
        "Critique: Dog One",
        "Critique: Dog Two",
        "Critique: Dog Three",
    ]
    assert reader.metadata.title == "Critiques of the day"
    reading.check(printed)


def test_a_book_draws_the_dog_once():
    one = len(book_of_critiques([critique()], "One"))
    eleven = len(book_of_critiques([critique()] * 11, "Eleven"))
    assert (eleven - one) / 10 < one / 4
