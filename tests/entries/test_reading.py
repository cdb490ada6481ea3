"""Files as clubs hand them in: whatever the encoding, separator, headings and date style, the same table comes out."""

import contextlib
import csv
import io
import zipfile
from datetime import date

import openpyxl
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from ringside.core.sentences import SENTENCES, sentence
from ringside.entries.reading import NotReadable, recognise
from ringside.entries.reading.cells import clean, guarded, has_lost_letters
from ringside.entries.reading.dates import read_date
from tests.entry_files import GOOD, HEADINGS, club_export


def test_a_semicolon_export_in_utf_8_is_recognised():
    found = recognise(club_export())
    assert (found.kind, found.encoding, found.delimiter, found.date_style) == ("csv", "utf-8", ";", "dd.mm.yyyy")
    assert found.columns["name"] == 0
    assert found.columns["neutered"] == 15
    assert [list(cells[:15]) for _, cells in found.rows[:3]] == [list(row[:15]) for row in GOOD]


def test_an_old_spreadsheets_comma_export_is_recognised():
    found = recognise(club_export(delimiter=",", encoding="cp1252"))
    assert (found.encoding, found.delimiter) == ("cp1252", ",")
    assert found.rows[2][1][10] == "Óscar Peñalva"


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1250", "cp1252", "cp1253"])
@pytest.mark.parametrize("delimiter", [";", ",", "\t", "|"])
def test_any_dialect_gives_the_same_rows(encoding, delimiter):
    plain = ("Plain Dog", "Plain", *GOOD[0][2:10], "Odo Plain", *GOOD[0][11:])
    rows = [plain, *(row for row in GOOD if _fits(row, encoding))]
    found = recognise(club_export(rows, delimiter=delimiter, encoding=encoding))
    assert found.delimiter == delimiter
    assert [list(cells[:13]) for _, cells in found.rows] == [list(row[:13]) for row in rows]


def _fits(row, encoding: str) -> bool:
    try:
        "".join(row).encode(encoding)
    except UnicodeEncodeError:
        return False
    return True


WORD = st.text(st.characters(categories=["L", "N", "Zs"], exclude_characters="\ufffd"), min_size=1, max_size=12)


@given(st.lists(st.lists(WORD, min_size=16, max_size=16), min_size=1, max_size=8), st.sampled_from(";,\t|"))
def test_what_is_written_as_a_table_is_read_back(rows, delimiter):
    assume(all(row[0].strip() for row in rows))
    found = recognise(club_export(rows, delimiter=delimiter))
    read = [[clean(cell) for cell in (*cells, *[""] * (16 - len(cells)))] for _, cells in found.rows]
    assert read == [[clean(cell) for cell in row] for row in rows]


def test_a_workbook_gives_the_same_as_the_text():
    book = openpyxl.Workbook()
    sheet = book.active
    sheet.append(HEADINGS)
    for row in GOOD:
        cells = list(row)
        day, month, year = map(int, row[4].split("."))
        cells[4] = date(year, month, day)
        cells[6] = int(row[6])
        sheet.append(cells)
    target = io.BytesIO()
    book.save(target)
    found = recognise(target.getvalue())
    assert found.kind == "xlsx"
    assert [cells[6] for _, cells in found.rows] == [row[6] for row in GOOD]
    assert [cells[4] for _, cells in found.rows] == ["2023-02-03", "2025-04-11", "2025-10-20"]


@pytest.mark.parametrize(
    ("dates", "style", "certain"),
    [
        (["13/02/2023", "01/03/2022"], "dd/mm/yyyy", True),
        (["02/13/2023", "03/01/2022"], "mm/dd/yyyy", True),
        (["2023-02-13"], "yyyy-mm-dd", True),
        (["13.2.2023"], "dd.mm.yyyy", True),
        (["01/02/2023", "03/04/2022"], "dd/mm/yyyy", False),
    ],
)
def test_the_date_style_is_told_from_all_rows(dates, style, certain):
    rows = [(*GOOD[0][:4], day, *GOOD[0][5:]) for day in dates]
    found = recognise(club_export(rows))
    assert (found.date_style, found.date_certain) == (style, certain)


@pytest.mark.parametrize(
    ("text", "style", "day"),
    [
        ("29.02.2024", "dd.mm.yyyy", date(2024, 2, 29)),
        ("29.02.2023", "dd.mm.yyyy", None),
        ("31.04.2023", "dd.mm.yyyy", None),
        ("00.01.2023", "dd.mm.yyyy", None),
        ("3 March 2023", "dd.mm.yyyy", date(2023, 3, 3)),
        ("3. März 2023", "mm/dd/yyyy", date(2023, 3, 3)),
        ("soon", "dd.mm.yyyy", None),
    ],
)
def test_a_date_is_read_or_is_none(text, style, day):
    assert read_date(text, style, 2026) == day


def archive(**files: bytes) -> bytes:
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as packed:
        for name, content in files.items():
            packed.writestr(name.replace("__", "/").replace("_xml", ".xml"), content)
    return target.getvalue()


HOSTILE = {
    "nothing": b"",
    "white space": b" \r\n\t ",
    "zero bytes": b"a;b\x00;c\n1;2;3",
    "a PDF": b"%PDF-1.7 ...",
    "a picture": b"\x89PNG\r\n\x1a\n....",
    "an old workbook": b"\xd0\xcf\x11\xe0....",
    "a web page": b"<!DOCTYPE html><table><tr><td>x</td></tr></table>",
    "a packed file that is no workbook": archive(readme_xml=b"hello"),
    "a damaged workbook": archive(xl__workbook_xml=b"<broken"),
    "a bomb": archive(xl__workbook_xml=b"<x/>", xl__worksheets__sheet1_xml=b"0" * 80_000_000),
    "headings only": (";".join(HEADINGS) + "\n").encode(),
    "one column": b"dog\nArrow\nBow\n",
    "too large": b"a;b\n" * 1_400_000,
    "a quote that never closes": (";".join(HEADINGS) + '\n"Arrow;Boxer\n' + "x;y\n" * 30).encode(),
    "a cell without end": (";".join(HEADINGS) + "\n" + "x" * 5000 + ";Boxer\n").encode(),
    "too many columns": (";".join([*HEADINGS, *map(str, range(90))]) + "\n" + ";".join("x" * 106) + "\n").encode(),
}


@pytest.mark.parametrize("name", HOSTILE)
def test_a_file_that_cannot_be_read_is_refused_with_a_sentence(name):
    with pytest.raises(NotReadable) as refused:
        recognise(HOSTILE[name])
    assert refused.value.finding.code in SENTENCES
    assert sentence(refused.value.finding).endswith((".", "?"))


@given(st.binary(max_size=300))
def test_any_bytes_are_read_or_refused_never_more(content):
    with contextlib.suppress(NotReadable):
        recognise(content)


@pytest.mark.parametrize("text", ["V?ra", "R?ta ?eleny", "?ukasz", "S\ufffdren"])
def test_letters_that_the_file_has_lost_are_seen(text):
    assert has_lost_letters(text)


@pytest.mark.parametrize("text", ["Věra", "Who?", "Ελένη", "O'Hara"])
def test_whole_names_are_left_alone(text):
    assert not has_lost_letters(text)


@given(st.text(max_size=30))
def test_what_goes_out_guarded_comes_back_as_it_was(text):
    assume(not text.startswith("'"))
    assert not guarded(clean(text)).startswith(("=", "+", "-", "@", "\t", "\r"))
    assert clean(guarded(clean(text))) == clean(text)


def test_csv_exports_open_with_any_reader():
    table = list(csv.reader(io.StringIO(club_export().decode("utf-8-sig")), delimiter=";"))
    assert table[0] == list(HEADINGS)
