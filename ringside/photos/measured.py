"""From a photo to its measurements, and from these to the rows and sentences of a reading."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from django.utils.translation import gettext

from ringside.core.sentences import apart
from ringside.photos.models import Photo, Steadiness
from ringside.photos.words import (
    NAMES,
    finding_words,
    interval_words,
    landmark_words,
    number_words,
    reading_words,
    span_words,
)
from scoring.measuring.doors import measure, read_photo
from scoring.measuring.turning import Span, spans
from scoring.standards.loader import load
from scoring.standards.model import BreedStandard, UnknownStandard

# Until a person has marked one photo twice: 4 pixels of a picture 2,000 wide. Ours, no source.
ASSUMED_SD_OF_WIDTH = 0.002
# Two markings on the same pixels do not make a finger surer than half a pixel.
LEAST_SD_PX = 0.5

# What is said of every photo, and what is said of one measurement only.
BESIDE = frozenset({"placement-matters"})
LENGTHS = frozenset({"in-centimetres"})
# How far out of the picture a dog may stand without anybody seeing it: said in figures beside every reading.
TURNED_DEG = (10, 20)


@dataclass(frozen=True, slots=True)
class Row:
    """One line of a reading, in words. `target` is empty where there is nothing to read against."""

    code: str
    name: str
    what: str
    value: str
    interval: str
    target: str
    source: str
    is_rule_of_thumb: bool
    reading: str
    why: str
    is_withheld: bool
    turned: str
    verdict: str


@dataclass(frozen=True, slots=True)
class Reading:
    rows: tuple[Row, ...]
    without_target: tuple[Row, ...]
    withheld: tuple[Row, ...]
    findings: tuple[str, ...]
    lengths: tuple[str, ...]
    beside: tuple[str, ...]


def standard_for(breed: str) -> BreedStandard | None:
    try:
        return load(breed)
    except UnknownStandard:
        return None


def click_sd_px(steadiness: Steadiness | None, width: int) -> float:
    """The SD of one click in pixels of a picture of this width: the person's own where it is known."""
    of_width = steadiness.sd_of_width if steadiness else ASSUMED_SD_OF_WIDTH
    return max(of_width * width, LEAST_SD_PX)


def measured(photo: Photo) -> dict[str, Any]:
    """The core's answer for a photo. Raises BadInput for landmarks that are none."""
    standard = standard_for(photo.dog.breed)
    known = {"withers_height_cm": photo.withers_height_cm, "standard": standard.code if standard else None}
    asked = {**_asked(photo), **known}
    return measure({name: value for name, value in asked.items() if value is not None})


def reading_of(photo: Photo) -> Reading:
    """The reading of a photo as it was measured when it was last marked."""
    standard = standard_for(photo.dog.breed)
    why = {one["facts"]["measurement"]: _why(one) for one in photo.measured.get("findings", []) if _withholds(one)}
    turned = _turned(photo)
    rows = [_row(one, standard, why.get(one["code"], ""), turned) for one in photo.measured.get("measurements", [])]
    findings = [one for one in photo.measured.get("findings", []) if not _withholds(one)]
    return Reading(
        rows=tuple(row for row in rows if row.target and not row.is_withheld),
        without_target=tuple(row for row in rows if not (row.target or row.is_withheld)),
        withheld=tuple(row for row in rows if row.is_withheld),
        findings=tuple(finding_words(one) for one in findings if one["code"] not in BESIDE | LENGTHS),
        lengths=tuple(finding_words(one) for one in findings if one["code"] in LENGTHS),
        beside=tuple(finding_words(one) for one in findings if one["code"] in BESIDE),
    )


def _withholds(finding: Mapping[str, Any]) -> bool:
    return finding["severity"] == "refuses"


def _why(finding: Mapping[str, Any]) -> str:
    """The sentence of a withheld measurement without the measurement's name, which stands before it already."""
    return finding_words(finding).partition(": ")[2]


def _asked(photo: Photo) -> dict[str, Any]:
    return {
        "view": photo.view,
        "landmarks": photo.landmarks,
        "click_sd_px": photo.click_sd_px,
        "ground": photo.ground,
        "image": [photo.width, photo.height],
    }


def _turned(photo: Photo) -> dict[int, Mapping[str, Span]]:
    """By degrees, what each measurement would be on the dog, had it stood turned by as much."""
    return {degrees: spans(read_photo(_asked(photo)), degrees) for degrees in TURNED_DEG}


def _turned_words(code: str, unit: str, turned: Mapping[int, Mapping[str, Span]]) -> str:
    """What a dog that stood at an angle to the picture would really have; empty where there is no saying."""
    found = [(degrees, one[code]) for degrees, one in turned.items() if code in one]
    told = [gettext("by {degrees}°, it has {span}").format(degrees=d, span=span_words(s.low, s.high, unit))
            for d, s in found]  # fmt: skip
    return gettext("If the dog stood turned {told}.").format(told=apart(told)) if found else ""


def _row(
    one: Mapping[str, Any], standard: BreedStandard | None, why: str, turned: Mapping[int, Mapping[str, Span]]
) -> Row:
    code, unit, target = one["code"], one["unit"], one["target"]
    named, is_withheld = NAMES[code], one["value"] is None
    return Row(
        code=code,
        name=str(named.name),
        what=str(named.what),
        value="" if is_withheld else number_words(one["value"], unit),
        interval="" if is_withheld else interval_words(code, one["value"], one["sd"], unit),
        target=target_words(target, unit) if target else "",
        source=_source(target, standard) if target else "",
        is_rule_of_thumb=bool(target) and target["kind"] == "rule-of-thumb",
        reading=reading_words(code, one["reading"], target["kind"] if target else None),
        why=why,
        is_withheld=is_withheld,
        turned="" if is_withheld else _turned_words(code, unit, turned),
        verdict=one["reading"],
    )


def target_words(target: Mapping[str, Any], unit: str) -> str:
    return f"{number_words(target['value'], unit)} ± {number_words(target['tolerance'], unit)}"


def _source(target: Mapping[str, Any], standard: BreedStandard | None) -> str:
    """Where the figure comes from, and between which landmarks it is meant."""
    between = ", ".join(landmark_words(name) for name in target["landmarks"])
    if target["kind"] == "rule-of-thumb":
        return gettext("rule of thumb of the trade, no standard's figure; between {between}").format(between=between)
    known = dict(standard.sources).get(target["source"], target["source"]) if standard else target["source"]
    is_theirs = target["tolerance_from"] == "standard"
    told = (
        gettext("{source}; between {between}")
        if is_theirs
        else gettext("{source}; the tolerance is ours; between {between}")
    )
    return told.format(source=known, between=between)
