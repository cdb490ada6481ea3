"""Writes a show as one file: every row of it with ids of the file's own, and every photo."""

import base64
import hashlib
import json
import zipfile
from collections.abc import Iterable
from pathlib import PurePosixPath
from typing import IO, Any

from django.db import models, transaction
from django.utils import timezone

from ringside.core.audit import record
from ringside.core.models import AuditLine
from ringside.dogs.models import Dog
from ringside.home.whole.ids import Ids, translated
from ringside.home.whole.tables import Model, covered, fields_of, is_counted, links, names_dog, path_to_show
from ringside.people.models import Account, Person
from ringside.shows.access import require
from ringside.shows.models import Show

FORMAT, VERSION = "ringside-show", 1
CONTENT, FILES = "show.json", "files/"
BATCH = 500
Rows = dict[Model, list[models.Model]]


def take_out(*, by: Account, show: Show, target: IO[bytes]) -> None:
    """For the owner of the show: it holds addresses, reports and everything the judges wrote."""
    require(by, show, "take-show-out")
    write_show(show, target)
    record(who=by, doing="take-show-out", about=f"show:{show.slug}"[:80])


def write_show(show: Show, target: IO[bytes]) -> None:
    """The whole show as it stands at one moment."""
    with transaction.atomic(), zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as archive:
        # Nothing of the show is numbered or judged while it is read.
        list(Show.objects.select_for_update().filter(pk=show.pk))
        rows = rows_of(show)
        ids = _counted(rows)
        files: dict[str, Any] = {}
        tables = {
            model._meta.label_lower: [_row(row, ids, archive, files) for row in found] for model, found in rows.items()
        }
        made_at = timezone.now().isoformat(timespec="seconds")
        told = {"format": FORMAT, "version": VERSION, "made_at": made_at, "files": files, "tables": tables}
        archive.writestr(CONTENT, json.dumps(told, ensure_ascii=False, allow_nan=False))


def rows_of(show: Show) -> Rows:
    """Every row of the show by model, in the order of their ids: first those that name nothing else."""
    found: Rows = {model: [] for model in covered()}
    for model in found:
        path = path_to_show(model)
        if path:
            found[model] = list(model._default_manager.filter(**{path: show.pk}).order_by("pk"))
    found[AuditLine] = list(AuditLine.objects.filter(scope=f"show:{show.pk}").order_by("pk"))
    # A dog brings its owners, owners bring their accounts.
    found[Dog] = _by_pk(Dog, _named(found, Dog))
    for model in (one for one in found if names_dog(one)):
        found[model] = _facts(model, found[Dog])
    for model in (Person, Account):
        found[model] = _by_pk(model, _named(found, model))
    return found


def _named(found: Rows, target: Model) -> set[Any]:
    fields = [(rows, field) for model, rows in found.items() for field in links(model) if field.related_model is target]
    named = {getattr(row, field.attname) for rows, field in fields for row in rows}
    return named - {None}


def _by_pk(model: Model, keys: Iterable[Any]) -> list[models.Model]:
    return sorted(model._default_manager.in_bulk(list(keys)).values(), key=lambda row: row.pk)


def _facts(model: Model, dogs: list[models.Model]) -> list[models.Model]:
    keys = [dog.pk for dog in dogs]
    found: list[models.Model] = []
    for start in range(0, len(keys), BATCH):
        found += model._default_manager.filter(dog__in=keys[start : start + BATCH])
    return sorted(found, key=lambda row: row.pk)


def _counted(rows: Rows) -> Ids:
    """The file's own ids: 1, 2, 3 in each table; rows with a key of their own keep it, as far as it holds no id."""
    ids = Ids()
    for model, found in rows.items():
        label, key = model._meta.label_lower, model._meta.pk
        assert key is not None
        for number, row in enumerate(found, 1):
            own = translated(ids, f"{label}.{key.name}", row.pk, {})
            ids.add(label, row.pk, number if is_counted(key) else own)
        if not is_counted(key):
            # Each database sorts texts its own way, and by ids of its own.
            found.sort(key=lambda row: str(ids.get(label, row.pk)))
    return ids


def _row(row: models.Model, ids: Ids, archive: zipfile.ZipFile, files: dict[str, Any]) -> dict[str, Any]:
    model, label = type(row), row._meta.label_lower
    raw = {field.name: getattr(row, field.attname) for field in fields_of(model)}
    told = {"id": ids.get(label, row.pk)} if row._meta.pk and is_counted(row._meta.pk) else {}
    for field in fields_of(model):
        value = raw[field.name]
        if isinstance(field, models.ForeignKey):
            told[field.name] = ids.get(field.related_model._meta.label_lower, value)
        elif isinstance(field, models.FileField):
            told[field.name] = _file(value, archive, files)
        else:
            told[field.name] = _plain(field, translated(ids, f"{label}.{field.name}", value, raw))
    return told


def _plain(field: models.Field, value: Any) -> Any:  # type: ignore[type-arg]
    """The value as JSON holds it: days and times as ISO 8601, bytes as base64, money and ids as text."""
    if isinstance(field, models.BinaryField):
        return base64.b64encode(bytes(value)).decode()
    if isinstance(field, models.JSONField) or value is None or isinstance(value, (bool, int, float, str)):
        return value
    return value.isoformat() if hasattr(value, "isoformat") else str(value)


def _file(value: Any, archive: zipfile.ZipFile, files: dict[str, Any]) -> str:
    """The name of the kept file within the archive; nothing where there is none."""
    if not value:
        return ""
    with value.open("rb") as source:
        content: bytes = source.read()
    name = f"{FILES}{len(files) + 1}{PurePosixPath(value.name).suffix}"
    archive.writestr(name, content, zipfile.ZIP_STORED)
    files[name] = {"bytes": len(content), "sha256": hashlib.sha256(content).hexdigest()}
    return name
