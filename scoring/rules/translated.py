"""Classes, grades and awards in other languages than English as the federations word them, one file a language."""

import tomllib
from functools import lru_cache
from importlib.resources import files

HERE = files("scoring.rules").joinpath("words")


@lru_cache(maxsize=16)
def words(language: str) -> dict[str, dict[str, str]]:
    """`classes`, `grades` and `awards`: a name by code. What a code means does not differ from book to book."""
    return tomllib.loads(HERE.joinpath(f"{language}.toml").read_text(encoding="utf-8"))
