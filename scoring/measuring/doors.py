"""The door `measure`: landmarks in, measurements with their SD, targets, readings and findings out."""

import math
from collections.abc import Collection, Iterable, Mapping
from typing import Any, cast

from scoring.bad_input import BadInput, a_list, a_number, a_string, an_object, join, one_of, value_of
from scoring.findings import Finding, notes
from scoring.measuring.landmarks import LANDMARKS, VIEWS, View
from scoring.measuring.measure import Measured, measure_photo
from scoring.measuring.photo import Photo, Place
from scoring.measuring.placement import turned_by
from scoring.measuring.rules_of_thumb import rules_of_thumb
from scoring.measuring.scale import Centimetres, body_length, in_centimetres
from scoring.measuring.targets import Figure
from scoring.measuring.uncertain import Uncertain


def measure(source: Mapping[str, Any]) -> dict[str, Any]:
    """Every measurement of one photo's view, with the findings about it.

    A withheld measurement has null value and sd and a finding with its code. Raises BadInput for a wrong type, a
    missing key, an unknown name or a negative SD or height; no geometry does.
    """
    photo, height = read_photo(source), _height(source)
    answer = measure_photo(photo, _figures(source))
    lengths = _lengths(photo, answer.measurements, height) if height else ()
    findings = (*answer.findings, *lengths, *_placements(photo))
    return {
        "measurements": [_as_json(one) for one in answer.measurements],
        "findings": [finding.as_json() for finding in findings],
    }


def read_photo(source: Mapping[str, Any]) -> Photo:
    """The clicked photo that the door was given. Raises BadInput."""
    landmarks = an_object(value_of(source, "landmarks"), "landmarks")
    ground, size = value_of(source, "ground", default=None), value_of(source, "image", default=None)
    return Photo(
        view=cast(View, one_of(value_of(source, "view"), VIEWS, "view")),
        landmarks={_landmark(name): _place(at, join("landmarks", name)) for name, at in landmarks.items()},
        click_sd=a_number(value_of(source, "click_sd_px"), "click_sd_px", low=0),
        ground=None if ground is None else _ground(ground),
        size=None if size is None else _place(size, "image"),
    )


def _landmark(name: str) -> str:
    return one_of(name, LANDMARKS, join("landmarks", name[:60]))


def _place(value: Any, at: str) -> Place:
    pair = a_list(value, at)
    if len(pair) != 2:
        raise BadInput("wrong-type", "Give two numbers here, [x, y].", at)
    return a_number(pair[0], join(at, 0)), a_number(pair[1], join(at, 1))


def _ground(value: Any) -> tuple[Place, Place]:
    pair = a_list(value, "ground")
    if len(pair) != 2:
        raise BadInput("wrong-type", "Give two points here, [[x, y], [x, y]].", "ground")
    return _place(pair[0], "ground[0]"), _place(pair[1], "ground[1]")


def _height(source: Mapping[str, Any]) -> Centimetres | None:
    height = value_of(source, "withers_height_cm", default=None)
    sd = value_of(source, "withers_height_sd_cm", default=0)
    known_sd = a_number(sd, "withers_height_sd_cm", low=0)
    if height is None:
        return None
    return Centimetres(a_number(height, "withers_height_cm", low=0), known_sd)


def _figures(source: Mapping[str, Any]) -> Collection[Figure]:
    """The figures of the breed's standard; no standard is read where none is named."""
    code = value_of(source, "standard", default=None)
    if code is None:
        return ()
    from scoring.standards.loader import load
    from scoring.standards.model import UnknownStandard

    try:
        return load(a_string(code, "standard")).figures
    except UnknownStandard as error:
        raise BadInput("unknown-code", str(error), "standard") from None


def _as_json(one: Measured) -> dict[str, Any]:
    return {
        "code": one.measurement.code,
        "value": None if one.quantity is None else one.quantity.value,
        "sd": one.sd,
        "unit": one.measurement.unit,
        "target": None if one.target is None else one.target.as_json(),
        "reading": one.reading,
    }


def _lengths(photo: Photo, measurements: Iterable[Measured], height: Centimetres) -> Iterable[Finding]:
    """What is measured over the wither height, as lengths; and the body's length along the slant."""
    of_height = [(one.measurement.code, one.quantity) for one in measurements if one.measurement.of_height]
    for code, ratio in (*of_height, ("body-length-along-the-slant", body_length(photo))):
        if ratio is not None and (finding := _length(code, ratio, photo.click_sd, height)):
            yield finding


def _length(code: str, ratio: Uncertain, click_sd: float, height: Centimetres) -> Finding | None:
    length = in_centimetres(ratio, click_sd, height)
    if not (math.isfinite(length.value) and math.isfinite(length.sd)):
        return None
    return notes("in-centimetres", measurement=code, value=length.value, sd=length.sd)


def _placements(photo: Photo) -> Iterable[Finding]:
    """What a landmark that lies elsewhere under the coat would do to a reading: said beside it, never in its SD."""
    for placement in rules_of_thumb().placements:
        turned = turned_by(photo, placement)
        if turned is not None and math.isfinite(turned.change):
            yield notes(
                "placement-matters",
                measurement=placement.measurement,
                landmark=placement.landmark,
                ahead_of_height=placement.ahead,
                down_of_height=placement.down,
                change=turned.change,
            )
