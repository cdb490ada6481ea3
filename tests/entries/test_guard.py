"""No exported cell starts a formula, and what goes out comes back in unchanged; read back by csv and openpyxl."""

import csv
import io

import openpyxl
import tablib
from hypothesis import example, given
from hypothesis import strategies as st

from ringside.entries.reading.cells import clean, guarded

# First signs by which spreadsheets know a formula: OWASP, "CSV Injection".
FORMULA = tuple("=+-@\t\r")
LETTERS = st.text(st.characters(codec="utf-8"), max_size=30)
STARTS = st.text(st.sampled_from("'=+-@\t a"), max_size=4)
KEPT = st.builds(lambda start, rest: clean(start + rest), STARTS, LETTERS)


@given(KEPT)
@example("'=1+1")
@example("''=1+1")
@example("'a'=b")
@example("-5")
def test_a_kept_text_goes_out_without_a_formula_and_comes_back_the_same(text):
    told = guarded(text)
    assert not told.startswith(FORMULA)
    assert clean(told) == text


@given(st.lists(KEPT, min_size=1, max_size=5))
def test_a_row_comes_back_from_a_csv_file(texts):
    table = tablib.Dataset(headers=[str(n) for n in range(len(texts))])
    table.append([guarded(text) for text in texts])
    content = table.export("csv", delimiter=";").encode("utf-8-sig").decode("utf-8-sig")
    rows = list(csv.reader(io.StringIO(content, newline=""), delimiter=";"))
    assert [clean(cell) for cell in rows[1]] == texts


@given(st.lists(KEPT, min_size=1, max_size=3))
@example([clean("\r")])
def test_a_row_comes_back_from_a_workbook_and_no_cell_of_it_is_a_formula(texts):
    table = tablib.Dataset(headers=[str(n) for n in range(len(texts))])
    table.append([guarded(text) for text in texts])
    sheet = openpyxl.load_workbook(io.BytesIO(table.export("xlsx", escape=False))).active
    cells = next(iter(sheet.iter_rows(min_row=2)), ())
    assert "f" not in {cell.data_type for cell in cells}
    read = [clean(str(cell.value or "")) for cell in cells]
    assert read + [""] * (len(texts) - len(read)) == texts
