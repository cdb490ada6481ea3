"""Text with separators: which separator it is, and its records."""

import csv
from collections import Counter
from collections.abc import Iterator, Sequence
from io import StringIO
from itertools import islice

from django.utils.translation import gettext_noop as _

from ringside.entries.reading.limits import MOST_ROWS
from ringside.entries.reading.problem import NotReadable
from ringside.entries.reading.words import columns_of

DELIMITERS: dict[str, str] = {";": _("semicolon"), ",": _("comma"), "\t": _("tab"), "|": _("upright bar")}
LOOKED_AT = 60
HEADINGS_WITHIN = 10
UNCLOSED = "unexpected end of data"

csv.field_size_limit(10 * 1024 * 1024)


def delimiter_of(text: str) -> str:
    """The separator that gives known headings and rows of one width. Raises NotReadable where none makes a table."""
    best = max(DELIMITERS, key=lambda sign: _fitness(text, sign))
    if _fitness(text, best)[1] <= 0:
        raise NotReadable("not-a-table")
    return best


def _fitness(text: str, delimiter: str) -> tuple[int, float]:
    """Known headings first, then the share of rows that have the commonest width, weighed by that width."""
    rows = [row for row in islice(_records(text, delimiter), LOOKED_AT) if any(row)]
    if not rows:
        return 0, 0
    width, times = Counter(len(row) for row in rows).most_common(1)[0]
    return max(len(columns_of(row)) for row in rows[:HEADINGS_WITHIN]), (width - 1) * times / len(rows)


def _records(text: str, delimiter: str) -> Iterator[list[str]]:
    return csv.reader(StringIO(text, newline=""), delimiter=delimiter)


def records(text: str, delimiter: str) -> list[Sequence[str]]:
    """Every record, blank ones too, so that their count is the row a spreadsheet shows."""
    _require_closed_quotes(text, delimiter)
    rows: list[Sequence[str]] = list(islice(_records(text, delimiter), 3 * MOST_ROWS))
    return rows


def _require_closed_quotes(text: str, delimiter: str) -> None:
    """A quotation mark that is opened and never closed would swallow the rest of the file into one cell."""
    reader = csv.reader(StringIO(text, newline=""), delimiter=delimiter, strict=True)
    line = 1
    while True:
        try:
            line = reader.line_num + 1
            next(reader)
        except StopIteration:
            return
        except csv.Error as error:
            if UNCLOSED in str(error):
                raise NotReadable("quote-never-closed", line=line) from None
