"""Reads the breed standards: a breed's file over what holds for every breed, over the vocabulary of points."""

import tomllib
from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache
from importlib.resources import files
from typing import Any, cast

from scoring.standards.model import (
    STANDINGS,
    Beyond,
    BreedStandard,
    Figure,
    MarkFault,
    Option,
    Point,
    Scale,
    ScaleItem,
    Size,
    SizeBand,
    Standing,
    Teeth,
    TeethClause,
    UnknownStandard,
    Variety,
    Verified,
)
from scoring.standards.teeth import teeth_named

Table = Mapping[str, Any]
HERE = files("scoring.standards")
OURS = "ours"


@lru_cache(maxsize=1)
def codes() -> tuple[str, ...]:
    """The codes of all standards, in alphabetical order."""
    names = (entry.name for entry in HERE.joinpath("data").iterdir())
    return tuple(sorted(name.removesuffix(".toml") for name in names if name.endswith(".toml")))


@lru_cache(maxsize=256)
def load(code: str) -> BreedStandard:
    """The standard with this code. Raises UnknownStandard."""
    if code not in codes():
        raise UnknownStandard(f'There is no standard "{code[:60]}". Known: {", ".join(codes())}.')
    return read_standard(HERE.joinpath("data", f"{code}.toml").read_text(encoding="utf-8"))


def all_standards() -> tuple[BreedStandard, ...]:
    return tuple(load(code) for code in codes())


@lru_cache(maxsize=1)
def vocabulary() -> dict[str, Table]:
    """Every point a standard can describe, by code, as vocabulary.toml tells it."""
    return cast(dict[str, Table], _table("vocabulary.toml")["points"])


@lru_cache(maxsize=1)
def every_breed() -> dict[str, Table]:
    """What all standards share: `points` by code and the `sources` they name."""
    return _table("every-breed.toml")


def _table(name: str) -> dict[str, Any]:
    return _toml(HERE.joinpath(name).read_text(encoding="utf-8"))


def _toml(text: str) -> dict[str, Any]:
    return tomllib.loads(text, parse_float=Decimal)


def read_standard(text: str) -> BreedStandard:
    """The standard that a breed's TOML text tells. Raises KeyError or ValueError where the text is incomplete."""
    told = _toml(text)
    proof = _proof(told)
    return BreedStandard(
        code=told["code"],
        name=told["name"],
        also=tuple(told.get("also", ())),
        authority=told["authority"],
        number=told["number"],
        group=told["group"],
        edition=told["edition"],
        sources=tuple({**every_breed()["sources"], **told["sources"]}.items()),
        caveats=tuple(told.get("caveats", ())),
        colours=tuple(told["colours"]),
        varieties=tuple(_variety(row) for row in told.get("varieties", ())),
        size_bands=tuple(_size_band(row) for row in told.get("size_bands", ())),
        points=tuple(_point(code, row, told) for code, row in told["points"].items()),
        sizes=tuple(_size(row) for row in told.get("sizes", ())),
        teeth=_teeth(told["teeth"]) if "teeth" in told else None,
        figures=tuple(_figure(row) for row in told.get("figures", ())),
        scale=_scale(told["scale"]) if "scale" in told else None,
        **proof,
    )


def _proof(row: Table, above: Table | None = None) -> dict[str, Any]:
    """The source and how well it is known, told by the row or else by the table above it."""
    above = above or row
    return {"source": row.get("source", above["source"]), "verified": row.get("verified", above["verified"])}


def _point(code: str, row: Table, told: Table) -> Point:
    """A point of the vocabulary as the breed changes it, or one that only this breed has, told in full."""
    words = {**vocabulary().get(code, {}), **{key: value for key, value in row.items() if key != "options"}}
    proof = _proof(row, told)
    return Point(
        code=code,
        section=words["section"],
        kind=words["kind"],
        name=words["name"],
        asks=row["asks"],
        weight=Decimal(words["weight"]) if "weight" in words else None,
        weight_source=_weight_source(words, told),
        low=words.get("low"),
        high=words.get("high"),
        options=_options(code, row, proof),
        mark_faults=tuple(MarkFault(int(mark), *_stands(told, proof)) for mark, told in row.get("marks", {}).items()),
        unit=words.get("unit"),
        least=words.get("least"),
        most=words.get("most"),
        sex=words.get("sex"),
        when_no=_when_no(code, row, proof),
        **proof,
    )


def _weight_source(words: Table, told: Table) -> str | None:
    if "weight" not in words:
        return None
    return told["scale"]["source"] if "scale" in told else OURS


def _options(code: str, row: Table, proof: Table) -> tuple[Option, ...]:
    """The options in the vocabulary's order, then the breed's own; each must have a standing."""
    words = vocabulary().get(code, {}).get("options", ())
    if words == "triadan":
        return ()
    general: Table = every_breed()["points"].get(code, {})
    stands = {key: _stands(value, general) for key, value in general.get("options", {}).items()}
    stands |= {key: _stands(value, proof) for key, value in row.get("options", {}).items()}
    if missing := [word for word in words if word not in stands]:
        raise ValueError(f"{code}: no standing for {', '.join(missing)}")
    return tuple(Option(key, *stands[key]) for key in dict.fromkeys([*words, *stands]))


def _stands(told: Any, proof: Table) -> tuple[Standing, str, Verified]:
    """A standing is told alone ("fault") or with its own proof (["fault", source, verified])."""
    standing, source, verified = (told, proof["source"], proof["verified"]) if isinstance(told, str) else told
    if standing not in STANDINGS:
        raise ValueError(f"{standing} is not a standing")
    return cast(Standing, standing), source, cast(Verified, verified)


def _when_no(code: str, row: Table, proof: Table) -> Option | None:
    general: Table = every_breed()["points"].get(code, {})
    if "when_no" in row:
        return Option("no", *_stands(row["when_no"], proof))
    return Option("no", *_stands(general["when_no"], general)) if "when_no" in general else None


def _size(row: Table) -> Size:
    low, high = row.get("ideal", (None, None))
    beyond = tuple(Beyond(float(more), *_stands(told, _proof(row))) for more, told in row.get("beyond", [[0, "fault"]]))
    return Size(
        point=row["point"],
        sex=row.get("sex"),
        low=float(row["low"]),
        high=float(row["high"]),
        ideal_low=None if low is None else float(low),
        ideal_high=None if high is None else float(high),
        unit=vocabulary()[row["point"]]["unit"],
        beyond=beyond,
        **_proof(row),
    )


def _size_band(row: Table) -> SizeBand:
    over, up_to = (None if row.get(key) is None else float(row[key]) for key in ("over", "up_to"))
    return SizeBand(row["size"], row["point"], over, up_to, **_proof(row))


def _variety(row: Table) -> Variety:
    return Variety(row["code"], row["name"], row.get("coat"), row.get("size"), **_proof(row))


def _teeth(row: Table) -> Teeth:
    return Teeth(teeth_named(row.get("not_counted", ())), tuple(_clause(clause, row) for clause in row["clauses"]))


def _clause(row: Table, above: Table) -> TeethClause:
    return TeethClause(
        code=row["code"],
        teeth=teeth_named(row["teeth"]),
        at_least=row.get("at_least", 1),
        in_all=row.get("in_all", 1),
        standing=row["standing"],
        **_proof(row, above),
    )


def _figure(row: Table) -> Figure:
    """A ratio may be told as published: "10/9"."""
    low, high = (row["at"], row["at"]) if "at" in row else (row["from"], row["to"])
    return Figure(
        measurement=row["measurement"],
        low=float(Fraction(low)),
        high=float(Fraction(high)),
        unit=row["unit"],
        landmarks=row["landmarks"],
        sex=row.get("sex"),
        **_proof(row),
    )


def _scale(row: Table) -> Scale:
    return Scale(
        items=tuple(ScaleItem(item["name"], Decimal(item["worth"]), tuple(item["points"])) for item in row["items"]),
        thresholds=tuple((grade, Decimal(least)) for grade, least in row.get("thresholds", {}).items()),
        **_proof(row),
    )
