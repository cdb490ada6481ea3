"""Reads what a photo is read against where no standard says: data/rules-of-thumb.toml."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from typing import Any


@dataclass(frozen=True, slots=True)
class Limits:
    length_ratio_low: float
    length_ratio_high: float
    breed_slack_short: float
    breed_slack_long: float
    feet_apart: float
    roll_deg: float


@dataclass(frozen=True, slots=True)
class Placement:
    """A landmark moved by parts of the wither height, to show what its place does to a measurement."""

    measurement: str
    landmark: str
    ahead: float
    down: float


@dataclass(frozen=True, slots=True)
class RulesOfThumb:
    """`tolerance` and `target` by measurement code; `spoken` gives the landmarks that a standard's words name."""

    source: str
    verified: str
    tolerance: Mapping[str, float]
    target: Mapping[str, float]
    limits: Limits
    placements: tuple[Placement, ...]
    spoken: Mapping[str, tuple[str, ...]]


@lru_cache(maxsize=1)
def rules_of_thumb() -> RulesOfThumb:
    path = files("scoring.measuring").joinpath("data", "rules-of-thumb.toml")
    told: dict[str, Any] = tomllib.loads(path.read_text(encoding="utf-8"))
    return RulesOfThumb(
        source=told["source"],
        verified=told["verified"],
        tolerance=told["tolerance"],
        target=told["target"],
        limits=Limits(**told["limits"]),
        placements=tuple(Placement(**row) for row in told["placement"]),
        spoken={words: tuple(names) for words, names in told["spoken"].items()},
    )
