"""How the doors say that an input cannot be used, and small typed readers that say it."""

import re
from collections.abc import Collection, Mapping, Sequence
from datetime import date
from typing import Any

MISSING: Any = object()
CALENDAR_DATE = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")


class BadInput(Exception):
    """An input that cannot be answered: `code` is stable, `message` says what to do, `at` is the path to the value.

    Codes: not-json, not-an-object, missing-key, wrong-type, unknown-code, out-of-range, bad-date, id-reused,
    several-sheets, too-large, missing-word (of a language that is not written out yet).
    """

    def __init__(self, code: str, message: str, at: str = "") -> None:
        super().__init__(message)
        self.code, self.message, self.at = code, message, at

    def as_json(self) -> dict[str, Any]:
        return {"error": {"code": self.code, "message": self.message, "at": self.at}}


def join(at: str, key: str | int) -> str:
    """Path of a member: join("dog", "titles") is "dog.titles", join("sheets", 0) is "sheets[0]"."""
    if isinstance(key, int):
        return f"{at}[{key}]"
    return f"{at}.{key}" if at else key


def value_of(source: Mapping[str, Any], key: str, at: str = "", default: Any = MISSING) -> Any:
    """The member `key`; without a default it must be there. A null counts as absent where there is a default."""
    found = source.get(key, MISSING)
    if found is MISSING or (found is None and default is not MISSING):
        if default is MISSING:
            raise BadInput("missing-key", f'Give "{key}".', join(at, key))
        return default
    return found


def a_string(value: Any, at: str) -> str:
    if not isinstance(value, str):
        raise BadInput("wrong-type", "Give a string here.", at)
    return value


def a_bool(value: Any, at: str) -> bool:
    if not isinstance(value, bool):
        raise BadInput("wrong-type", "Give true or false here.", at)
    return value


def an_int(value: Any, at: str, low: int | None = None, high: int | None = None) -> int:
    """A whole number; true and false are not numbers, 3.0 is not a whole number."""
    if isinstance(value, bool) or not isinstance(value, int):
        raise BadInput("wrong-type", "Give a whole number here.", at)
    _in_range(value, at, low, high)
    return value


def a_number(value: Any, at: str, low: float | None = None, high: float | None = None) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise BadInput("wrong-type", "Give a number here.", at)
    try:
        number = float(value)
    except OverflowError:
        raise BadInput("out-of-range", "This number is too large to work with.", at) from None
    if number != number or number in (float("inf"), float("-inf")):
        raise BadInput("out-of-range", "Give a finite number here.", at)
    _in_range(number, at, low, high)
    return number


def a_date(value: Any, at: str) -> date:
    """An ISO 8601 calendar date, "2026-06-13"."""
    text = a_string(value, at)
    try:
        if not CALENDAR_DATE.fullmatch(text):
            raise ValueError
        return date.fromisoformat(text)
    except ValueError:
        raise BadInput("bad-date", "Give a date as year-month-day, such as 2026-06-13.", at) from None


def one_of(value: Any, known: Collection[str], at: str) -> str:
    text = a_string(value, at)
    if text not in known:
        raise BadInput("unknown-code", f'"{text[:60]}" is not known here. Known: {", ".join(sorted(known))}.', at)
    return text


def an_object(value: Any, at: str) -> Mapping[str, Any]:
    if not isinstance(value, dict):
        raise BadInput("wrong-type", "Give an object here.", at)
    return value


def a_list(value: Any, at: str, most: int = 100_000) -> Sequence[Any]:
    if not isinstance(value, list):
        raise BadInput("wrong-type", "Give a list here.", at)
    if len(value) > most:
        raise BadInput("too-large", f"At most {most} values can be given here.", at)
    return value


def _in_range(value: float, at: str, low: float | None, high: float | None) -> None:
    if (low is not None and value < low) or (high is not None and value > high):
        if high is None:
            raise BadInput("out-of-range", f"Give a number not below {low} here.", at)
        if low is None:
            raise BadInput("out-of-range", f"Give a number not above {high} here.", at)
        raise BadInput("out-of-range", f"Give a number from {low} to {high} here.", at)
