"""Why a measurement has no value: the only reasons for which one is withheld."""

import math
from itertools import combinations

from scoring.findings import Finding, refuses
from scoring.measuring.definitions import Measurement
from scoring.measuring.photo import Photo
from scoring.measuring.uncertain import Uncertain


def measured(photo: Photo, measurement: Measurement) -> Uncertain | Finding:
    """The value of a measurement with its slopes, or the finding that withholds it.

    Rule: withheld where a landmark is missing, two coincide, a slope has no ground line, or the landmarks that are
    there leave it without a side, a height, a length or an area. Doubt never withholds.
    """
    return _obstacle(photo, measurement) or _value(photo, measurement)


def _obstacle(photo: Photo, measurement: Measurement) -> Finding | None:
    code = measurement.code
    if missing := [name for name in measurement.landmarks if name not in photo.landmarks]:
        return refuses("landmark-missing", measurement=code, landmarks=missing)
    if same := _coincident(photo, measurement):
        return refuses("landmarks-coincide", measurement=code, landmarks=list(same))
    if measurement.levelling == "required" and photo.ground_line is None:
        return refuses("no-ground-line", measurement=code)
    if measurement.needs_facing and photo.facing is None:
        return refuses("facing-unknown", measurement=code)
    return None


def _coincident(photo: Photo, measurement: Measurement) -> tuple[str, str] | None:
    pairs = combinations(measurement.landmarks, 2)
    return next(((one, two) for one, two in pairs if photo.landmarks[one] == photo.landmarks[two]), None)


def _value(photo: Photo, measurement: Measurement) -> Uncertain | Finding:
    points = photo.points if measurement.levelling == "free" else photo.dog_points
    try:
        value = measurement.formula(*(points[name] for name in measurement.landmarks))
        if math.isfinite(value.value) and math.isfinite(measurement.sd(value, photo.click_sd)):
            return value
    except ZeroDivisionError:
        pass
    return refuses("no-extent", measurement=measurement.code, landmarks=list(measurement.landmarks))
