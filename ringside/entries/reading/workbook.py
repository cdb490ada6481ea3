"""A workbook's sheet as rows of text: dates as year-month-day, whole numbers without exponent, formulas as written.

Formulas are read as text and never as their remembered result, so that what a program computed is not taken for
what an owner wrote; a row with one stays until it is mended.
"""

import re
import warnings
from collections.abc import Sequence
from datetime import date, datetime, time
from io import BytesIO
from itertools import islice
from typing import Any
from zipfile import BadZipFile, ZipFile

from openpyxl import load_workbook

from ringside.entries.reading.limits import MOST_COLUMNS, MOST_ROWS, MOST_UNPACKED
from ringside.entries.reading.problem import NotReadable
from ringside.entries.reading.words import columns_of

MOST_PARTS = 2_000
LOOKED_AT = 20
ZEROS = re.compile(r"0{2,}")
SHEETS = re.compile(r"xl/(workbook\.xml|worksheets/)")


def sheets(content: bytes) -> list[tuple[str, list[Sequence[str]]]]:
    """Each sheet that is not empty, with its rows. Raises NotReadable."""
    _require_harmless(content)
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # styles and extensions that the library leaves out hold no entries
            book = load_workbook(BytesIO(content), read_only=True, data_only=False, keep_links=False)
            found = [(sheet.title, _rows(sheet)) for sheet in book.worksheets]
            book.close()
    except NotReadable:
        raise
    except Exception as error:  # the library lets any of its parts' errors through for a damaged workbook
        raise NotReadable("workbook-damaged") from error
    return [(title, rows) for title, rows in found if rows]


def best_sheet(found: Sequence[tuple[str, list[Sequence[str]]]]) -> tuple[str, list[Sequence[str]]]:
    """The sheet with most known headings, the first of them on a tie."""
    return max(found, key=lambda sheet: max(len(columns_of(row)) for row in sheet[1][:LOOKED_AT]))


def _require_harmless(content: bytes) -> None:
    """Sizes are looked up in the archive's own list before anything is unpacked."""
    try:
        with ZipFile(BytesIO(content)) as archive:
            parts = archive.infolist()
            _require_honest_sizes(archive)
    except (BadZipFile, NotImplementedError, OSError, ValueError, RuntimeError, EOFError) as error:
        raise NotReadable("workbook-damaged") from error
    if not any(SHEETS.match(part.filename) for part in parts):
        raise NotReadable("not-a-workbook")


def _require_honest_sizes(archive: ZipFile) -> None:
    parts = archive.infolist()
    if len(parts) > MOST_PARTS or sum(part.file_size for part in parts) > MOST_UNPACKED:
        raise NotReadable("unpacks-too-large", most=MOST_UNPACKED // 1024 // 1024)


def _rows(sheet: Any) -> list[Sequence[str]]:
    sheet.reset_dimensions()
    rows: list[Sequence[str]] = []
    filled = 0
    for row in islice(sheet.iter_rows(), 3 * MOST_ROWS):
        texts = _trimmed([_text(cell) for cell in row])
        if len(texts) > MOST_COLUMNS:
            raise NotReadable("too-many-columns", most=MOST_COLUMNS)
        rows.append(texts)
        filled = len(rows) if texts else filled
        if filled > 2 * MOST_ROWS:
            raise NotReadable("too-many-rows", most=MOST_ROWS)
    return rows[:filled]


def _trimmed(texts: list[str]) -> list[str]:
    while texts and not texts[-1]:
        texts.pop()
    return texts


def _text(cell: Any) -> str:
    value = cell.value
    if value is None:
        return ""
    if isinstance(value, str):
        return value
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        return _number(value, cell.number_format or "")
    if isinstance(value, datetime):
        return value.date().isoformat() if value.time() == time.min else value.isoformat(" ")
    return value.isoformat() if isinstance(value, date | time) else f"={getattr(value, 'text', '') or ''}"


def _number(value: int | float, number_format: str) -> str:
    """A whole number in full: a chip number has 15 digits, which a spreadsheet's number just holds."""
    if isinstance(value, float) and not value.is_integer():
        return repr(value)
    text = str(int(value))
    return text.zfill(len(number_format)) if ZEROS.fullmatch(number_format) else text


def is_zip(content: bytes) -> bool:
    return content.startswith(b"PK\x03\x04")
