"""The JSON schema of show.json, made from the models that it holds."""

from typing import Any

from django.db import models

from ringside.home.whole.out import CONTENT, FORMAT, VERSION
from ringside.home.whole.tables import covered, fields_of, is_counted

Schema = dict[str, Any]


def schema() -> Schema:
    tables = {model._meta.label_lower: _table(model) for model in covered()}
    about_file = _object({"bytes": {"type": "integer", "minimum": 0}, "sha256": {"type": "string"}})
    told = {
        "format": {"const": FORMAT},
        "version": {"const": VERSION},
        "made_at": {"type": "string", "description": "when the file was made, ISO 8601"},
        "files": {"type": "object", "description": f"name in the archive to {about_file}"},
        "tables": _object(tables),
    }
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", "title": CONTENT, **_object(told)}


def _table(model: type[models.Model]) -> Schema:
    fields = {field.name: _field(field) for field in fields_of(model)}
    key = model._meta.pk
    counted = {"id": {"type": "integer", "minimum": 1}} if key and is_counted(key) else {}
    words = " ".join((model.__doc__ or "").split())
    return {"type": "array", "description": words, "items": _object({**counted, **fields})}


def _object(properties: Schema) -> Schema:
    return {
        "type": "object", "properties": properties, "required": list(properties), "additionalProperties": False,
    }  # fmt: skip


def _field(field: models.Field) -> Schema:  # type: ignore[type-arg]
    if isinstance(field, models.JSONField):
        return {"description": "any JSON"}
    if isinstance(field, models.ForeignKey):
        target = field.related_model._meta
        is_number = is_counted(target.pk)
        kind, words = "integer" if is_number else "string", f"id in {target.label_lower}"
    else:
        kind, words = _kind(field)
    return {"type": [kind, "null"] if field.null else kind, **({"description": words} if words else {})}


def _kind(field: models.Field) -> tuple[str, str]:  # type: ignore[type-arg]
    if isinstance(field, models.BooleanField):
        return "boolean", ""
    if isinstance(field, models.IntegerField):
        return "integer", ""
    if isinstance(field, models.FloatField):
        return "number", ""
    words = {
        models.BinaryField: "base64", models.DateTimeField: "time, ISO 8601", models.DateField: "day, ISO 8601",
        models.UUIDField: "UUID", models.FileField: "name in the archive, or empty",
    }  # fmt: skip
    return "string", next((said for kind, said in words.items() if isinstance(field, kind)), "")
