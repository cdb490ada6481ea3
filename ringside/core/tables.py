"""Words kept as one TOML file a language: a language is added by adding its file."""

import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any


@cache
def by_language(folder: Path) -> Mapping[str, Any]:
    """What each `<code>.toml` in the folder holds, by code, in alphabetical order."""
    return {path.stem: tomllib.loads(path.read_text(encoding="utf-8")) for path in sorted(folder.glob("*.toml"))}
