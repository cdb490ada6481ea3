"""The office's papers in the reader's language: no English label is left, and no word is wider than its cell."""

import io
import re
from dataclasses import replace
from datetime import date

import pytest
from django.conf import settings
from django.test import Client
from django.utils import translation
from pypdf import PdfReader
from reportlab.pdfbase.pdfmetrics import stringWidth

from ringside.core import tongues
from ringside.dogs.models import Dog
from ringside.entries.models import Entry
from ringside.papers import absentees, hand_sheets, judges_book, ring_sheets
from ringside.papers.cards import Card, cards_pdf
from ringside.papers.desk_views import PAPERS
from ringside.papers.fonts import BOLD, TEXT, printable
from ringside.papers.gathering import form_of, programme_of
from ringside.papers.hand_sheets import hand_sheets_pdf
from ringside.papers.programme import BreedList, ClassList, Exhibit, FinalList, Programme
from ringside.papers.tables import BODY, width_of
from ringside.people.models import Person
from ringside.results.wording import presence_words
from scoring.standards import loader as standards
from tests.papers import reading
from tests.shows_for_tests import SmallShow, small_show

TRANSLATED = tongues.translated()
LANGUAGES = [code for code, _ in settings.LANGUAGES]
SIZES = ("A4", "letter")
FACT = re.compile(r"\{[^{}]*\}|%\([a-z_]+\)s")
A_WORD = re.compile(r"[^\W\d_]{3,}")


@pytest.fixture
def at() -> SmallShow:
    """A show whose names are words of no language."""
    at = small_show()
    at.show.name = "Zilmar"
    at.show.save()
    for number, dog in enumerate(Dog.objects.all()):
        Dog.objects.filter(pk=dog.pk).update(name=f"Brixo {number}", sex="bitch" if number == 1 else "dog")
    for number, person in enumerate(Person.objects.all()):
        Person.objects.filter(pk=person.pk).update(name=f"Umbrel {number}")
    Entry.objects.filter(pk=at.entries[2].pk).update(state="withdrawn")
    return at


def full(at: SmallShow) -> Programme:
    """The show with every part that a paper can have, in the language that is active."""
    found = programme_of(at.show)
    first = found.breeds[0]
    absent = replace(first.classes[0].exhibits[0], presence="excused", sire="", breeder="")
    one = replace(first.classes[0], exhibits=[absent, *first.classes[0].exhibits[1:]], is_published=True)
    breed = replace(first, judge="", classes=[one], given=((first.awards[0], "2", "Brixo"),), points=(("2", "B", 3),))
    return replace(
        found,
        breeds=[breed, *found.breeds[1:]],
        finals=(FinalList("Orbul", "Umbrel", (("1", "2", "Brixo", first.name),)), FinalList("Ustil", "", ())),
        corrections=((first.name, presence_words("absent"), "1", "Xyrra"),),
    )


def english_left(text: str, language: str) -> list[str]:
    """The English words of the papers and of the rules' and standards' data that the text says as they stand."""
    in_text, with_capitals = set(A_WORD.findall(text)), f" {text} "
    found = []
    with translation.override(language):
        for one in tongues.messages():
            places = {name for name, _line in one.locations}
            if not one.id or not any(name.startswith("ringside/papers/") or name == tongues.DATA for name in places):
                continue
            for english, told in _said(one):
                for part in (part.strip(" .,:;") for part in FACT.split(english)):
                    words = A_WORD.findall(part)
                    is_foreign = words and not set(words) <= set(A_WORD.findall(told)) and set(words) <= in_text
                    if is_foreign and re.search(rf"(?<!\w){re.escape(part)}(?!\w)", with_capitals):
                        found.append(part)
    return found


def _said(one) -> list[tuple[str, str]]:
    """Each English form of a message with its translations, in the language that is active."""
    if isinstance(one.id, tuple):
        told = " ".join(translation.ngettext(*one.id, count) for count in (1, 2))
        return [(english, told) for english in one.id]
    return [(one.id, translation.pgettext(one.context, one.id) if one.context else translation.gettext(one.id))]


@pytest.mark.django_db
@pytest.mark.parametrize("language", TRANSLATED)
@pytest.mark.parametrize("code", PAPERS)
def test_no_english_label_is_left_on_a_paper(at, code, language):
    with translation.override(language):
        printed = [PAPERS[code].print(one, "A4") for one in (full(at), Programme("Zilmar", "", []))]
    assert [english_left(reading.text(paper), language) for paper in printed] == [[], []]


@pytest.mark.django_db
def test_english_labels_are_found_on_english_papers(at):
    for code, paper in PAPERS.items():
        assert len(english_left(reading.text(paper.print(full(at), "A4")), "de")) > 2, code


@pytest.mark.parametrize("language", TRANSLATED)
def test_no_english_label_is_left_on_a_number_card(language):
    card = Card("12", "Brixo", ["Orbul"], "R 1", "ABCD EFGH")
    with translation.override(language):
        printed = [cards_pdf(cards, "Zilmar", "https://zilmar.example/") for cards in ([card], [])]
    assert [english_left(reading.text(paper), language) for paper in printed] == [[], []]
    assert PdfReader(io.BytesIO(printed[0])).trailer["/Root"]["/Lang"] == language


@pytest.mark.parametrize(
    ("language", "title"),
    [("en", "Catalogue:"), ("de", "Katalog:"), ("fr", "Catalogue\u00a0:"), ("es", "Catálogo:")],
)
def test_a_paper_names_its_language_and_its_title_in_it(language, title):
    with translation.override(language):
        read = PdfReader(io.BytesIO(PAPERS["catalogue"].print(Programme("Zilmar", "", []), "A4")))
    assert read.trailer["/Root"]["/Lang"] == language
    assert read.metadata.title == f"{title} Zilmar"


# Dates as in Unicode CLDR 44, long form; the trade's words are common practice, from memory.
@pytest.mark.django_db
@pytest.mark.parametrize(
    ("language", "words"),
    [
        ("en", ["Open class, dogs", "born 1 May 2022", "born 2 May 2022", "Page 1 of 2"]),
        ("de", ["Offene Klasse, Rüden", "geworfen am 1. Mai 2022", "Seite 1 von 2"]),
        ("fr", ["Classe ouverte, mâles", "né le 1 mai 2022", "Propriétaire : Umbrel", "Page 1 sur 2"]),
        ("es", ["Clase abierta, machos", "nacido el 1 de mayo de 2022", "Página 1 de 2"]),
    ],
)
def test_the_catalogue_speaks_the_language_asked_for(at, language, words):
    client = Client(headers={"Accept-Language": "es"})
    client.force_login(at.accounts["secretary"])
    text = reading.text(client.get(f"/papers/show/small/catalogue.pdf?language={language}").content)
    assert [one for one in words if one not in text] == []


@pytest.mark.django_db
def test_the_papers_desk_prints_in_the_pages_language_until_another_is_chosen(at):
    client = Client(headers={"Accept-Language": "de"})
    client.force_login(at.accounts["secretary"])
    assert "Ringlisten" in reading.text(client.get("/papers/show/small/ring-sheets.pdf").content)
    assert "Ringlisten" in reading.text(client.get("/papers/show/small/ring-sheets.pdf?language=xx").content)
    hidden = '<input type="hidden" name="language" value="{}">'
    assert client.get("/papers/show/small/").text.count(hidden.format("de")) == len(PAPERS) + 2
    assert client.get("/papers/show/small/?language=fr").text.count(hidden.format("fr")) == len(PAPERS) + 2
    cards = client.post("/office/small/number-cards.pdf", {"codes": "all", "language": "fr"}).content
    assert "code de rattachement" in reading.text(cards)
    awards = client.get("/papers/show/small/award-cards.pdf?kind=blank&language=es").content
    assert "Mejor de raza" in reading.text(awards)


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("paper", [absentees, judges_book, ring_sheets], ids=lambda paper: paper.__name__)
def test_no_word_of_a_head_is_wider_than_its_column(paper, size, language):
    padding = 8.0
    with translation.override(language):
        for words, share in zip(paper.COLUMNS, paper.SHARES, strict=True):
            for word in printable(str(words)).split(" "):
                assert stringWidth(word, TEXT, BODY.fontSize) <= share * width_of(size) - padding, word


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("code", standards.codes())
@pytest.mark.parametrize("size", SIZES)
def test_no_word_of_a_standard_is_cut_on_a_judges_sheet(code, size, language):
    form = form_of(code, "dog", language)
    breed = BreedList("Group 1", "Breed", "Judge", "Ring 1", None, [ClassList("Open class", "dog", [Exhibit("1")])],
                      {"dog": form})  # fmt: skip
    with translation.override(language):
        [page] = reading.pages(hand_sheets_pdf(Programme("Show", "13 June 2026", [breed]), size))
    words = "".join(page.split())
    for scale in form.scales:
        for told in (scale.name, scale.low, scale.high):
            assert "".join(printable(told).split()) in words
    for name, answers in form.questions:
        for told in (name, *answers):
            assert "".join(printable(told).split()) in words


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("size", SIZES)
def test_no_word_on_a_judges_sheet_reaches_into_a_box(size, language):
    column = (width_of(size) - hand_sheets.GAP) / 2
    beside = (column - hand_sheets.STOPS * hand_sheets.BOX) / 2 - 4
    for code in standards.codes():
        for scale in form_of(code, "bitch", language).scales:
            assert stringWidth(printable(scale.name), BOLD, 8) <= column
            for word in printable(f"{scale.low} {scale.high}").split():
                assert stringWidth(word, TEXT, 7) <= beside, word


def test_no_line_of_a_paper_begins_with_a_french_colon():
    dogs = [Exhibit("1", "B" * at, breeder="b" * at, owners=("o",), born=date(2024, 3, 3)) for at in range(1, 90)]
    breed = BreedList("G", "Breed", "", "", None, [ClassList("Open", "dog", dogs)])
    with translation.override("fr"):
        pages = reading.pages(PAPERS["catalogue"].print(Programme("Zilmar", "", [breed]), "A4"))
    assert "Propriétaire" in " ".join(pages)
    assert [line for page in pages for line in page.splitlines() if line.strip().startswith(":")] == []


def test_ring_sheets_follow_the_days_of_the_calendar():
    """By date, not by the words for it: "10 June" would stand before "9 June"."""
    days = [date(2026, 6, 10), None, date(2026, 6, 9)]
    breeds = [
        BreedList("G", f"Breed {at}", "", "Ring 1", day, [ClassList("Open", "dog", [Exhibit("1")])])
        for at, day in enumerate(days)
    ]
    text = reading.text(PAPERS["ring-sheets"].print(Programme("Zilmar", "", breeds), "A4"))
    assert text.index("Breed 2") < text.index("Breed 0") < text.index("Breed 1")
