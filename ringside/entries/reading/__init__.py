"""A club's file of entries, read: what kind it is, how it is written, and its rows as text. No database here."""

from codecs import BOM_UTF8
from collections.abc import Sequence
from dataclasses import dataclass

from ringside.entries.reading import separated, table, workbook
from ringside.entries.reading.encodings import decode
from ringside.entries.reading.limits import MOST_BYTES
from ringside.entries.reading.problem import NotReadable

__all__ = ["NotReadable", "Recognised", "recognise"]

# What else people hand in, by its first bytes, and what it is called.
OTHERS = (
    (b"\xd0\xcf\x11\xe0", "old-workbook"),
    (b"%PDF", "is-pdf"),
    (b"\x89PNG", "is-picture"),
    (b"\xff\xd8\xff", "is-picture"),
    (b"GIF8", "is-picture"),
    (b"{\\rtf", "is-document"),
)
PAGES = (b"<!doctype html", b"<html", b"<table", b"<?xml")


@dataclass(frozen=True, slots=True)
class Recognised:
    """A file as it was understood. `rows` are those below the headings, with the number a spreadsheet shows.

    `columns` says which column (from 0) holds which field; `other_sheets` are those that were not read.
    """

    kind: str
    encoding: str
    delimiter: str
    sheet: str
    other_sheets: tuple[str, ...]
    heading_line: int
    headings: tuple[str, ...]
    rows: tuple[tuple[int, tuple[str, ...]], ...]
    columns: dict[str, int]
    date_style: str
    date_certain: bool
    date_mixed: bool


def recognise(content: bytes, encoding: str = "", delimiter: str = "") -> Recognised:
    """The file understood; an encoding or a delimiter named by a person is not guessed.

    Raises NotReadable, with the finding that says why, for whatever is no table of entries.
    """
    _require_table(content)
    if workbook.is_zip(content):
        return _of_workbook(content)
    text, encoding = decode(content, encoding)
    delimiter = delimiter or separated.delimiter_of(text)
    return _recognised("csv", separated.records(text, delimiter), encoding=encoding, delimiter=delimiter)


def _require_table(content: bytes) -> None:
    if not content.strip():
        raise NotReadable("file-empty")
    if len(content) > MOST_BYTES:
        raise NotReadable("file-too-large", most=MOST_BYTES // 1024 // 1024)
    other = next((code for start, code in OTHERS if content.startswith(start)), None)
    if other or content[:200].removeprefix(BOM_UTF8).strip().lower().startswith(PAGES):
        raise NotReadable(other or "is-page")


def _of_workbook(content: bytes) -> Recognised:
    found = workbook.sheets(content)
    if not found:
        raise NotReadable("file-empty")
    title, rows = workbook.best_sheet(found)
    others = tuple(other for other, _ in found if other != title)
    return _recognised("xlsx", rows, sheet=title, other_sheets=others)


def _recognised(
    kind: str,
    records: Sequence[Sequence[str]],
    encoding: str = "",
    delimiter: str = "",
    sheet: str = "",
    other_sheets: tuple[str, ...] = (),
) -> Recognised:
    every = table.filled(records)
    table.require_limits(every)
    line = table.heading_line(every)
    headings = table.headings_of(every, line)
    rows = [row for row in every if row[0] > line]
    if not rows:
        raise NotReadable("headings-only")
    columns = table.recognised_columns(headings, rows)
    style = table.date_style(rows, columns)
    return Recognised(
        kind=kind,
        encoding=encoding,
        delimiter=delimiter,
        sheet=sheet,
        other_sheets=other_sheets,
        heading_line=line,
        headings=tuple(headings),
        rows=tuple((number, tuple(cells)) for number, cells in rows),
        columns=columns,
        date_style=style.code,
        date_certain=style.certain,
        date_mixed=style.mixed,
    )
