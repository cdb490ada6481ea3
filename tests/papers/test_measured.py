"""The measured photo on a critique: whole on one page, in four languages, on both paper sizes."""

import io

import pytest
from pypdf import PdfReader

from ringside.drawings.build import RECTANGULAR
from ringside.drawings.snapshot import SIZE, snapshot
from ringside.papers.critique import critique_pdf
from ringside.papers.measured import Figure, words
from scoring.measuring.definitions import CODES
from tests.papers.reading import pages
from tests.papers.samples import critique

TAKEN = snapshot(RECTANGULAR)
LANGUAGES = ("en", "fr", "de", "es")


def figure(language: str) -> Figure:
    told = words()[language]
    rows = [
        (told["names"][code], "38.1°", "± 2.8°", "30.0° ± 6.0° *", told["readings"]["much-too-much"]) for code in CODES
    ]
    at = TAKEN.landmarks
    return Figure(
        jpeg=TAKEN.jpeg, width=SIZE[0], height=SIZE[1],
        lines=[("level", TAKEN.ground), ("path", (at["pin-bone"], at["stifle"], at["hock"]))],
        dots=tuple(at.values()), labels=[("99.2°", at["stifle"])], rows=rows,
    )  # fmt: skip


@pytest.mark.parametrize("size", ["A4", "letter"])
@pytest.mark.parametrize("language", LANGUAGES)
def test_picture_table_and_limits_stand_on_one_page(language, size):
    paper = critique(language=language, measured=figure(language))
    content, told = critique_pdf(paper, size), words()[language]
    index, text = next(
        (index, " ".join(text.split())) for index, text in enumerate(pages(content)) if told["head"] in text
    )
    for code in CODES:
        assert told["names"][code] in text
    assert " ".join(told["note"].split()[-6:]) in text
    assert len(PdfReader(io.BytesIO(content)).pages[index].images) >= 1


def test_every_language_names_every_measurement_and_every_reading():
    for language in LANGUAGES:
        assert set(words()[language]["names"]) == set(CODES)
        assert set(words()[language]["readings"]) == set(words()["en"]["readings"])
        assert len(words()[language]["columns"]) == 5
