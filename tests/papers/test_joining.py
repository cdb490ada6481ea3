"""Several files as one: read back by another library, validated by qpdf where it is there."""

import io
import shutil
import subprocess

import pypdf
import pytest

from ringside.papers.critique import book_of_critiques
from ringside.papers.joining import join
from tests.papers.samples import critique

TITLE = "Critiques: Summer Show"
# A name that reads like a reference of the file format, with a bracket in it.
DOGS = ["Aurora", "Bruno (the 3 0 R)", "Cleo", "Doran vom Grund", "Elfe"]


def joined(groups) -> bytes:
    target = io.BytesIO()
    join([book_of_critiques([critique(dog=dog) for dog in group], TITLE) for group in groups], target, "en")
    return target.getvalue()


@pytest.fixture(scope="module")
def content() -> bytes:
    return joined([DOGS[:2], DOGS[2:4], DOGS[4:]])


def test_every_page_is_there_in_order(content):
    pages = pypdf.PdfReader(io.BytesIO(content)).pages
    assert len(pages) == len(DOGS)
    for page, dog in zip(pages, DOGS, strict=True):
        assert dog in page.extract_text()


def test_the_contents_list_every_critique_once_and_lead_to_its_page(content):
    reader = pypdf.PdfReader(io.BytesIO(content))
    assert [(one.title, reader.get_destination_page_number(one)) for one in reader.outline] == [
        (f"Critique: {dog}", number) for number, dog in enumerate(DOGS)
    ]


def test_title_language_and_fonts_are_those_of_the_pieces(content):
    reader = pypdf.PdfReader(io.BytesIO(content))
    assert reader.metadata.title == TITLE
    assert reader.trailer["/Root"]["/Lang"] == "en"
    for page in reader.pages:
        for font in page["/Resources"]["/Font"].values():
            assert "/FontFile2" in font.get_object()["/FontDescriptor"]


def test_one_piece_alone_reads_as_it_did():
    alone = pypdf.PdfReader(io.BytesIO(joined([DOGS])))
    book = pypdf.PdfReader(io.BytesIO(book_of_critiques([critique(dog=dog) for dog in DOGS], TITLE)))
    assert [page.extract_text() for page in alone.pages] == [page.extract_text() for page in book.pages]


@pytest.mark.skipif(shutil.which("qpdf") is None, reason="qpdf is not installed")
def test_qpdf_finds_nothing_wrong(content, tmp_path):
    file = tmp_path / "joined.pdf"
    file.write_bytes(content)
    done = subprocess.run(["qpdf", "--check", file], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
