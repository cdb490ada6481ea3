"""Reads a show's file that anybody may have made: every table, row, field and photo is what it must be, or refused."""

import base64
import binascii
import hashlib
import io
import json
import zipfile
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from typing import Any

from django.core.exceptions import ValidationError
from django.db import models
from django.utils.translation import gettext
from PIL import Image

from ringside.core.denied import Denied
from ringside.core.intake import Door, NotTaken, take
from ringside.entries.proofs.intake import PROOF
from ringside.home.whole.out import CONTENT, FILES, FORMAT, VERSION
from ringside.home.whole.tables import Model, covered, fields_of, is_counted
from ringside.photos.intake import LONGEST_SIDE
from ringside.results.paper_page import PAGE

MOST_CONTENT = 512 * 1024 * 1024
MOST_FILE = 32 * 1024 * 1024
MOST_FILES = 100_000
MOST_BYTES = 20 * 1024 * 1024 * 1024
PLAIN_TYPES = (bool, int, float, str)


class NotTakenIn(Denied):
    """The sentence says why the file is not taken in; nothing of it was."""


@dataclass(frozen=True)
class Told:
    """What a file says: rows as JSON by table, and what it says of its photos."""

    tables: dict[Model, list[dict[str, Any]]]
    files: dict[str, dict[str, Any]]


def read(archive: zipfile.ZipFile) -> Told:
    """The file's content, every row with the fields that it must have. Raises NotTakenIn."""
    told = _json(archive)
    if told.get("format") != FORMAT:
        raise NotTakenIn("This is no file of a show: make one with “Take the whole show out” or `show_out`.")
    if told.get("version") != VERSION:
        raise NotTakenIn("Another version of the program wrote this file. Bring both sites to the same version.")
    tables, files = told.get("tables"), told.get("files")
    if not isinstance(tables, dict) or not isinstance(files, dict):
        raise NotTakenIn("The file is not complete: its tables are missing.")
    by_label = {model._meta.label_lower: model for model in covered()}
    if tables.keys() != by_label.keys():
        odd = ", ".join(sorted(tables.keys() ^ by_label.keys()))[:200]
        raise NotTakenIn(
            "The file and this site do not know the same tables ({odd}). Use the same version on both.", odd=odd
        )
    _check_files(archive, files)
    return Told({model: _rows(model, tables[label]) for label, model in by_label.items()}, files)


def _json(archive: zipfile.ZipFile) -> dict[str, Any]:
    names = archive.namelist()
    if CONTENT not in names or any(name != CONTENT and not name.startswith(FILES) for name in names):
        raise NotTakenIn("This is no file of a show: make one with “Take the whole show out” or `show_out`.")
    if archive.getinfo(CONTENT).file_size > MOST_CONTENT:
        raise NotTakenIn("{name} is larger than {most} MB.", name=CONTENT, most=MOST_CONTENT // 1024 // 1024)
    try:
        told = json.loads(archive.read(CONTENT).decode(), parse_constant=_no_number)
    except (ValueError, RecursionError):
        raise NotTakenIn("{name} in the file is broken and cannot be read.", name=CONTENT) from None
    if not isinstance(told, dict):
        raise NotTakenIn("{name} in the file is broken and cannot be read.", name=CONTENT)
    return told


def _no_number(name: str) -> None:
    raise ValueError(name)


def _check_files(archive: zipfile.ZipFile, files: dict[str, Any]) -> None:
    if {name for name in archive.namelist() if name != CONTENT} != files.keys():
        raise NotTakenIn("The photos in the file are not those that it says it holds.")
    for name, about in files.items():
        if archive.getinfo(name).file_size > MOST_FILE:
            raise NotTakenIn("{name} is larger than any photo.", name=name)
        digest = hashlib.sha256(archive.read(name)).hexdigest()
        if not isinstance(about, dict) or about.get("sha256") != digest:
            raise NotTakenIn("{name} is not what was put in: the file was changed or damaged.", name=name)


def _rows(model: Model, rows: Any) -> list[dict[str, Any]]:
    label, key = model._meta.label_lower, model._meta.pk
    names = {field.name for field in fields_of(model)} | ({"id"} if key and is_counted(key) else set())
    if not isinstance(rows, list):
        raise NotTakenIn("{name} in the file is no list.", name=label)
    for number, row in enumerate(rows, 1):
        if not isinstance(row, dict) or row.keys() != names:
            raise NotTakenIn(
                "Row {number} of {name} does not have the fields that it must have.", number=number, name=label
            )
    return rows


def value_of(field: models.Field, value: Any) -> Any:  # type: ignore[type-arg]
    """The value as the field keeps it. Raises ValidationError."""
    if value is None:
        if not field.null:
            raise ValidationError(gettext("A value is missing."))
        return None
    if isinstance(field, models.BinaryField):
        return _bytes(value)
    if isinstance(field, models.JSONField):
        return value
    if not isinstance(value, PLAIN_TYPES) or isinstance(value, str) is not _is_text(field):
        raise ValidationError(gettext("A value is of another kind."))
    if isinstance(value, str) and "\0" in value:
        raise ValidationError(gettext("A text holds zero bytes."))
    return field.clean(value, None) if value not in field.empty_values else field.to_python(value)


def _bytes(value: Any) -> bytes:
    try:
        return base64.b64decode(value, validate=True)
    except (binascii.Error, TypeError, ValueError):
        raise ValidationError(gettext("Bytes cannot be read.")) from None


def _is_text(field: models.Field) -> bool:  # type: ignore[type-arg]
    return not isinstance(field, (models.IntegerField, models.FloatField, models.BooleanField))


def jpeg_as_kept(content: bytes, row: dict[str, Any]) -> None:
    """A photo as our own intake keeps it: a plain JPEG of the size that its row says, with nothing told about it."""
    try:
        with Image.open(io.BytesIO(content), formats=["JPEG"]) as image:
            is_ours = image.size == (row["width"], row["height"]) and max(image.size) <= LONGEST_SIDE
            is_ours = is_ours and not image.getexif() and content.endswith(b"\xff\xd9")
            if is_ours:
                image.load()
    except Exception:
        # A file made to harm can raise anything at all from within a decoder; none of it is a picture to us.
        is_ours = False
    if not is_ours:
        raise NotTakenIn("A photo in the file is no picture as this program keeps them.")


def paper_as_kept(content: bytes, row: dict[str, Any], door: Door) -> None:
    """A copy of a paper of the kind that its row says, which the intake of that door would take."""
    try:
        is_ours = take(content, door).media_type == row["media_type"]
    except NotTaken:
        is_ours = False
    if not is_ours:
        raise NotTakenIn("A copy of a paper in the file is no PDF or picture as this program keeps them.")


# What each kept file must be; a field without a line here takes no file in.
CHECKS: dict[str, Callable[[bytes, dict[str, Any]], None]] = {
    "photos.photo.file": jpeg_as_kept,
    "entries.proof.file": partial(paper_as_kept, door=PROOF),
    "results.paperclass.page": partial(paper_as_kept, door=PAGE),
    "results.paperawards.page": partial(paper_as_kept, door=PAGE),
}
