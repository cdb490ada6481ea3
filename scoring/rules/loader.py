"""Reads the rule books: one TOML file a governing body, overlays for a national member laid over it.

A record may carry `since` and `until` (the last day); it belongs to the book only on days between them.
An overlay names the book it changes (`over`). Its records change the values they name in the record of the same
code, or add a new record; every other value replaces the one below. `class_order` puts new classes in their place.
"""

import tomllib
from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import date
from functools import cache, lru_cache
from pathlib import Path
from typing import Any, TypeVar

from scoring.rules.rulebook import (
    SEXES,
    Award,
    Candidates,
    Cite,
    ClassRule,
    Competition,
    CountOf,
    Document,
    Grade,
    GradeScale,
    Group,
    GroupRow,
    Need,
    PointsRule,
    PointsWin,
    Provenance,
    RuleBook,
    TitleRoute,
    TitleRule,
)

DATA = Path(__file__).parent / "data"
SOURCES = Path(__file__).parent / "sources.toml"
Table = Mapping[str, Any]
Record = TypeVar("Record")


def codes() -> tuple[str, ...]:
    """The governing bodies whose rules are here."""
    return tuple(sorted(path.stem for path in DATA.glob("*.toml")))


def overlay_codes(code: str) -> tuple[str, ...]:
    """The overlays that can be laid over this body's rules."""
    paths = sorted((DATA / "overlays").glob("*.toml"))
    return tuple(path.stem for path in paths if _read(path)["over"] == code)


def load(code: str, on: date | None = None, overlays: Sequence[str] = ()) -> RuleBook:
    """The rules of a body in force on a day.

    `on` None takes what is in force for good. Later overlays go over earlier ones. KeyError for a body or an overlay
    that is not here, or an overlay made for another body.
    """
    return _load(code, on, tuple(overlays))


@cache
def sources() -> Mapping[str, str]:
    """What each source key stands for."""
    read: Mapping[str, str] = _read(SOURCES)
    return read


@lru_cache(maxsize=256)
def _load(code: str, on: date | None, overlays: tuple[str, ...]) -> RuleBook:
    if code not in codes():
        raise KeyError(code)
    table = _read(DATA / f"{code}.toml")
    for overlay in overlays:
        if overlay not in overlay_codes(code):
            raise KeyError(overlay)
        above = _read(DATA / "overlays" / f"{overlay}.toml")
        named = {"code": code, "name": f"{table['name']}, {above['name']}"}
        table = {**_laid_over(table, above), **named}
    return _book(_in_force(table, on), overlays)


@cache
def _read(path: Path) -> Table:
    with path.open("rb") as file:
        return tomllib.load(file)


def _laid_over(below: Table, above: Table) -> dict[str, Any]:
    """One table laid over another: tables and lists of coded records join, anything else is replaced."""
    merged = dict(below)
    for key, value in above.items():
        under = below.get(key)
        if isinstance(value, dict) and isinstance(under, dict):
            merged[key] = _laid_over(under, value)
        elif isinstance(under, list) and _are_coded(under) and _are_coded(value):
            merged[key] = _joined(under, value)
        else:
            merged[key] = value
    return merged


def _are_coded(items: Iterable[Any]) -> bool:
    return all(isinstance(item, dict) and "code" in item for item in items)


def _joined(below: Iterable[Table], above: Iterable[Table]) -> list[Table]:
    joined = {record["code"]: record for record in below}
    for record in above:
        joined[record["code"]] = _laid_over(joined.get(record["code"], {}), record)
    return list(joined.values())


def _in_force(value: Any, on: date | None) -> Any:
    """The data without the records that are not in force on the day."""
    if isinstance(value, dict):
        return {key: _in_force(inner, on) for key, inner in value.items()}
    if isinstance(value, list):
        return [_in_force(item, on) for item in value if _holds_on(item, on)]
    return value


def _holds_on(item: Any, on: date | None) -> bool:
    if not isinstance(item, dict):
        return True
    if on is None:
        return "until" not in item
    return bool(item.get("since", date.min) <= on <= item.get("until", date.max))


def _book(table: Table, overlays: tuple[str, ...]) -> RuleBook:
    ranks = {record["code"]: rank for rank, record in enumerate(table.get("grades", []))}
    return RuleBook(
        code=table["code"],
        name=table["name"],
        edition=table["edition"],
        dated=table.get("dated"),
        overlays=overlays,
        languages=tuple(table["languages"]),
        age_day=table["age_day"],
        upper_age_day=table.get("upper_age_day", table["age_day"]),
        places=table["places"],
        classes_per_dog=table.get("classes_per_dog"),
        classes=_all(_ordered(table), lambda record: _class(record, table["neutered"])),
        grades=_all(table.get("grades", []), lambda record: _grade(record, ranks[record["code"]])),
        scales=_all(table.get("scales", []), _scale),
        awards=_all(table["awards"], _award),
        titles=_all(table["titles"], _title),
        documents=_all(table.get("documents", []), _document),
        competitions=_all(table.get("competitions", []), _competition),
        points=_points(table["points"]) if "points" in table else None,
        provenance=_provenance(table),
        groups=_all(table.get("groups", []), _group),
        groups_by_standard=table.get("groups_by_standard", False),
    )


def _ordered(table: Table) -> Iterable[Table]:
    records = {record["code"]: record for record in table["classes"]}
    return [records[code] for code in table.get("class_order", records) if code in records]


def _all(records: Iterable[Table], build: Callable[[Table], Record]) -> tuple[Record, ...]:
    return tuple(build(record) for record in records)


def _provenance(record: Table) -> Provenance:
    but = {key: Cite(cite["source"], cite["verified"]) for key, cite in record.get("but", {}).items()}
    return Provenance(Cite(record["source"], record["verified"]), but)


def _class(record: Table, neutered: Any) -> ClassRule:
    return ClassRule(
        code=record["code"],
        name=record["name"],
        least_months=record["least_months"],
        most_months=record.get("most_months"),
        last_day=record.get("last_day", "open-question"),
        sexes=tuple(record.get("sexes", SEXES)),
        titles=tuple(record.get("titles", ())),
        documents=tuple(record.get("documents", ())),
        neutered=record.get("neutered", neutered),
        certificates=tuple(record.get("certificates", ())),
        scale=record.get("scale"),
        win_limit=record.get("win_limit", False),
        champions_elsewhere=record.get("champions_elsewhere", "allowed"),
        places=record.get("places"),
        provenance=_provenance(record),
    )


def _grade(record: Table, rank: int) -> Grade:
    return Grade(
        code=record["code"],
        name=record["name"],
        rank=rank,
        needs_reason=record["needs_reason"],
        may_be_placed=record["may_be_placed"],
        abbreviation=record.get("abbreviation", ""),
        provenance=_provenance(record),
    )


def _scale(record: Table) -> GradeScale:
    return GradeScale(record["code"], tuple(record["grades"]), record.get("least_for_place"), _provenance(record))


def _award(record: Table) -> Award:
    return Award(
        code=record["code"],
        name=record["name"],
        level=record["level"],
        kind=record["kind"],
        may_be_withheld=record["may_be_withheld"],
        candidates=_all(record.get("candidates", []), _candidates),
        provenance=_provenance(record),
        places=record.get("places", 1),
        reserve_of=record.get("reserve_of"),
        moves_up=record.get("moves_up", False),
    )


def _group(record: Table) -> Group:
    return Group(record["code"], record["name"], tuple(record.get("breeds", ())), _provenance(record))


def _candidates(record: Table) -> Candidates:
    lists = {key: tuple(value) for key, value in record.items() if isinstance(value, list)}
    return Candidates(**{**record, **lists})


def _title(record: Table) -> TitleRule:
    return TitleRule(
        code=record["code"],
        name=record["name"],
        routes=_all(record.get("routes", []), _route),
        provenance=_provenance(record),
    )


def _route(record: Table) -> TitleRoute:
    return TitleRoute(
        code=record["code"],
        counts_from=record.get("counts_from", {}),
        once_a_show=tuple(record.get("once_a_show", ())),
        needs=_all(record["needs"], _need),
    )


def _need(record: Table) -> Need:
    return Need(
        kind=record["kind"],
        awards=tuple(record["awards"]),
        least=record.get("least", 1),
        months=record.get("months"),
        until_months=record.get("until_months"),
        provenance=_provenance(record),
    )


def _document(record: Table) -> Document:
    return Document(record["code"], record["name"], _provenance(record))


def _competition(record: Table) -> Competition:
    return Competition(
        code=record["code"],
        name=record["name"],
        least=record.get("least", 1),
        most=record.get("most"),
        same=tuple(record.get("same", ())),
        one_of_each=record.get("one_of_each", False),
        least_years=record.get("least_years"),
        most_years=record.get("most_years"),
        provenance=_provenance(record),
    )


def _points(table: Table) -> PointsRule:
    return PointsRule(
        counts=tuple(table["counts"]),
        cap=table["cap"],
        steps=tuple((least, points) for least, points in table.get("steps", [])),
        base=table.get("base"),
        wins=_all(table["wins"], _points_win),
        group=_all(table.get("group", []), lambda row: GroupRow(row["least_breeds"], tuple(row["points"]))),
        group_needs=table.get("group_needs"),
        best_in_show=table.get("best_in_show"),
        provenance=_provenance(table),
        counted={name: _count(table["counted"][name]) for name in table["counts"]},
        counted_from=_provenance(table["counted"]).whole,
        no_points_from=tuple(table.get("no_points_from", ())),
    )


def _count(record: Table) -> CountOf:
    return CountOf(record["sex"], tuple(record["classes"]))


def _points_win(record: Table) -> PointsWin:
    counts = {sex: tuple(record[sex]) for sex in SEXES if sex in record}
    return PointsWin(record["code"], counts, record.get("fixed"), record.get("full_from_dogs"), _provenance(record))
