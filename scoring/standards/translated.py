"""The sheet's words in other languages than English, one TOML file a language: what a tablet shows of a standard.

What a standard asks is not among them: it is quoted as our English reading of the standard.
"""

import tomllib
from functools import lru_cache
from importlib.resources import files
from typing import Any

HERE = files("scoring.standards").joinpath("words")
Words = dict[str, Any]


@lru_cache(maxsize=1)
def languages() -> tuple[str, ...]:
    """The languages that there is a file for, English not among them, in alphabetical order."""
    return tuple(sorted(entry.name.removesuffix(".toml") for entry in HERE.iterdir() if entry.name.endswith(".toml")))


@lru_cache(maxsize=16)
def words(language: str) -> Words:
    """`breeds`, `varieties` (by English name), `sections`, `points` ([name] or [name, low, high]) and `options`."""
    return tomllib.loads(HERE.joinpath(f"{language}.toml").read_text(encoding="utf-8"))
