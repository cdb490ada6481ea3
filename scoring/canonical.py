"""One text for one JSON value, letter for letter the same in Python and in a browser, and its digest.

Rule: RFC 8785 (JSON Canonicalization Scheme, IETF, 2020): members sorted by UTF-16 code units, no spaces, numbers as
ECMAScript prints them. Limits: whole numbers outside +-(2^53 - 1) have no exact twin in a browser and are refused,
as are infinities, halves of surrogate pairs and nesting deeper than 100.
"""

import hashlib
import json
from decimal import Decimal
from typing import Any

from scoring.bad_input import BadInput

LARGEST_WHOLE = 2**53 - 1
DEEPEST = 100


def digest(value: Any) -> str:
    return hashlib.sha256(text(value).encode("utf-8")).hexdigest()


def text(value: Any) -> str:
    """The canonical JSON text of a value that `check_sound` and `check_whole_numbers` let pass."""
    if isinstance(value, dict):
        names = sorted(value, key=lambda name: name.encode("utf-16-be"))
        return "{" + ",".join(f"{text(name)}:{text(value[name])}" for name in names) + "}"
    if isinstance(value, list):
        return "[" + ",".join(map(text, value)) + "]"
    if isinstance(value, float):
        return number_text(value)
    return json.dumps(value, ensure_ascii=False)


def number_text(value: float) -> str:
    """A number as ECMAScript prints it.

    Rule: the shortest digits that read back as the same number; a plain decimal from 1e-6 up to, not including,
    1e21, else with an exponent. Source: ECMA-262, Number::toString.
    """
    sign, digits, exponent = Decimal(repr(value)).as_tuple()
    padded = "".join(map(str, digits)).lstrip("0")
    if not padded:
        return "0"
    return "-" * sign + _placed(padded.rstrip("0"), len(padded) + int(exponent))


def _placed(digits: str, point: int) -> str:
    """Digits with the decimal point after `point` of them."""
    if len(digits) <= point <= 21:
        return digits.ljust(point, "0")
    if 0 < point <= 21:
        return f"{digits[:point]}.{digits[point:]}"
    if -6 < point <= 0:
        return f"0.{'0' * -point}{digits}"
    fraction = f".{digits[1:]}" if len(digits) > 1 else ""
    return f"{digits[0]}{fraction}e{point - 1:+d}"


def check_sound(value: Any, at: str) -> None:
    """Refuses what JSON readers let through and JSON writers choke on. Raises BadInput at the value's path."""
    level = [value]
    for _ in range(DEEPEST):
        for found in level:
            _check_plain(found, at)
        level = [member for found in level for member in _members(found)]
    if level:
        raise BadInput("too-large", f"Nest at most {DEEPEST} lists and objects here.", at)


def check_whole_numbers(value: Any, at: str) -> None:
    """Refuses whole numbers that a browser would round. Raises BadInput at the value's path."""
    if isinstance(value, int) and abs(value) > LARGEST_WHOLE:
        raise BadInput("out-of-range", "Give whole numbers from -(2^53 - 1) to 2^53 - 1 here.", at)
    for member in _members(value):
        check_whole_numbers(member, at)


def _members(value: Any) -> list[Any]:
    if isinstance(value, dict):
        return [*value, *value.values()]
    return value if isinstance(value, list) else []


def _check_plain(value: Any, at: str) -> None:
    if isinstance(value, float) and not abs(value) < float("inf"):
        raise BadInput("out-of-range", "Give finite numbers here.", at)
    if isinstance(value, str):
        try:
            value.encode("utf-8")
        except UnicodeEncodeError:
            raise BadInput("wrong-type", "Give whole characters here, not half of a surrogate pair.", at) from None
