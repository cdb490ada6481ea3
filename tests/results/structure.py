"""A small structural check of JSON against the part of JSON Schema that our schemas use."""

from datetime import date
from typing import Any

TYPES = {
    "string": str,
    "integer": int,
    "boolean": bool,
    "number": (int, float),
    "object": dict,
    "array": list,
    "null": type(None),
}


def problems(value: Any, schema: dict[str, Any], at: str = "$") -> list[str]:
    """Where the value is not what the schema says; a keyword this check does not know is a problem too."""
    unknown = schema.keys() - {
        "$schema", "title", "description", "type", "properties", "required", "additionalProperties", "items", "enum",
        "const", "minimum", "format",
    }  # fmt: skip
    found = [f"{at}: unknown keyword {name}" for name in sorted(unknown)]
    if "const" in schema and value != schema["const"]:
        found.append(f"{at}: not {schema['const']}")
    if "enum" in schema and value not in schema["enum"]:
        found.append(f"{at}: {value!r} is not among {schema['enum']}")
    if "type" in schema and not _is_a(value, schema["type"]):
        return [*found, f"{at}: {value!r} is no {schema['type']}"]
    if "minimum" in schema and value is not None and value < schema["minimum"]:
        found.append(f"{at}: {value} is too small")
    if schema.get("format") == "date" and value is not None:
        date.fromisoformat(value)
    return [*found, *_inside(value, schema, at)]


def _is_a(value: Any, types: str | list[str]) -> bool:
    names = [types] if isinstance(types, str) else types
    return any(isinstance(value, TYPES[name]) and not (name == "integer" and value is True) for name in names)


def _inside(value: Any, schema: dict[str, Any], at: str) -> list[str]:
    found = []
    if isinstance(value, dict) and "properties" in schema:
        known = schema["properties"]
        found += [f"{at}: {name} is missing" for name in schema["required"] if name not in value]
        found += [f"{at}: {name} is not described" for name in value if name not in known]
        for name in value.keys() & known.keys():
            found += problems(value[name], known[name], f"{at}.{name}")
    if isinstance(value, list) and "items" in schema:
        for index, member in enumerate(value):
            found += problems(member, schema["items"], f"{at}[{index}]")
    return found
