"""Rows of text as a table of entries: where its headings are, what its columns hold, how its dates are written."""

import re
from collections import Counter
from collections.abc import Callable, Iterator, Sequence

from ringside.entries.reading.dates import DateStyle, read_date, style_of
from ringside.entries.reading.limits import MOST_COLUMNS, MOST_IN_CELL, MOST_ROWS
from ringside.entries.reading.problem import NotReadable
from ringside.entries.reading.words import columns_of

Row = tuple[int, list[str]]
HEADINGS_WITHIN = 10
LEAST_HEADINGS = 2
LOOKED_AT = 50
CHIP = re.compile(r"\d{15}")
ADDRESS = re.compile(r"[^@\s]+@[^@\s]+\.[^@\s]+")
FAR_YEAR = 2099


def filled(rows: Sequence[Sequence[str]]) -> list[Row]:
    """The rows that hold anything, with the number a spreadsheet shows; blank cells at a row's end are dropped."""
    found = [(number, _trimmed(row)) for number, row in enumerate(rows, start=1)]
    return [(number, row) for number, row in found if row]


def _trimmed(row: Sequence[str]) -> list[str]:
    last = max((index for index, cell in enumerate(row) if cell.strip()), default=-1)
    return list(row[: last + 1])


def require_limits(rows: Sequence[Row]) -> None:
    """Raises NotReadable for a table without rows, or larger than any show's."""
    if not rows:
        raise NotReadable("file-empty")
    if len(rows) > MOST_ROWS + 1:
        raise NotReadable("too-many-rows", most=MOST_ROWS)
    for number, row in rows:
        if len(row) > MOST_COLUMNS:
            raise NotReadable("too-many-columns", most=MOST_COLUMNS)
        if any(len(cell) > MOST_IN_CELL for cell in row):
            raise NotReadable("cell-too-long", line=number, most=MOST_IN_CELL)
    if max(len(row) for _, row in rows) < LEAST_HEADINGS:
        raise NotReadable("not-a-table")


def heading_line(rows: Sequence[Row]) -> int:
    """The line of the headings, below any title lines; 0 where the rows begin at once."""
    known = {number: len(columns_of(row)) for number, row in rows[:HEADINGS_WITHIN]}
    best = max(known, key=lambda number: known[number])
    if known[best] >= LEAST_HEADINGS:
        return best
    first = rows[0]
    return 0 if any(_is_data(cell) for cell in first[1]) else first[0]


def _is_data(cell: str) -> bool:
    cell = cell.strip()
    dated = read_date(cell, "dd/mm/yyyy", FAR_YEAR) or read_date(cell, "mm/dd/yyyy", FAR_YEAR)
    return bool(CHIP.fullmatch(cell) or ADDRESS.fullmatch(cell) or dated)


def headings_of(rows: Sequence[Row], line: int) -> list[str]:
    """The heading of each column. Without headings there are as many columns as most rows have."""
    named = next((row for number, row in rows if number == line), [])
    width = len(named) or Counter(len(row) for _, row in rows).most_common(1)[0][0]
    return [(named[at].strip() if named else "") or f"column {at + 1}" for at in range(width)]


def recognised_columns(headings: Sequence[str], rows: Sequence[Row]) -> dict[str, int]:
    """Which column holds which field: by its heading, or else by what only that field looks like."""
    columns = columns_of(headings)
    for field, looks in (("chip", CHIP.fullmatch), ("email", ADDRESS.fullmatch), ("born", _is_dated)):
        free = [at for at in range(len(headings)) if at not in columns.values()]
        if field not in columns:
            found = next((at for at in free if _mostly(looks, rows, at)), None)
            columns |= {} if found is None else {field: found}
    return columns


def _is_dated(cell: str) -> bool:
    return not CHIP.fullmatch(cell) and _is_data(cell) and not ADDRESS.fullmatch(cell)


def _mostly(looks: Callable[[str], object], rows: Sequence[Row], at: int) -> bool:
    cells = [cell for cell in column(rows[:LOOKED_AT], at) if cell]
    return bool(cells) and sum(bool(looks(cell)) for cell in cells) * 2 > len(cells)


def column(rows: Sequence[Row], at: int) -> Iterator[str]:
    return (row[at].strip() if at < len(row) else "" for _, row in rows)


def date_style(rows: Sequence[Row], columns: dict[str, int]) -> DateStyle:
    return style_of(column(rows, columns["born"])) if "born" in columns else DateStyle("yyyy-mm-dd", certain=True)
