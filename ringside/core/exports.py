"""Tables that go out as files, and handing a made file out."""

import re

from django.http import HttpResponse
from django.utils.http import content_disposition_header
from tablib import Dataset

XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
KINDS = {"csv": "text/csv; charset=utf-8", "xlsx": XLSX}


def written(table: Dataset, kind: str) -> bytes:
    """The table as "csv" (UTF-8 with its mark, semicolons) or "xlsx". Its cells are guarded against formulas before."""
    if kind == "xlsx":
        content: bytes = table.export("xlsx", escape=False)
        return content
    return table.export("csv", delimiter=";").encode("utf-8-sig")


def plain_name(words: str, longest: int) -> str:
    """The words as a file's name, without an ending, that any file system takes."""
    return re.sub(r"[^\w-]+", "-", words).strip("-")[:longest]


def as_file(answer: HttpResponse, name: str) -> HttpResponse:
    """The answer as a download that nothing on the way keeps: people are in it."""
    answer.headers["Content-Disposition"] = content_disposition_header(True, name) or "attachment"
    answer.headers["Cache-Control"] = "private, no-store"
    return answer


def table_as_file(content: bytes, kind: str, name: str) -> HttpResponse:
    """A written table under its name without an ending."""
    return as_file(HttpResponse(content, content_type=KINDS[kind]), f"{name}.{kind}")
