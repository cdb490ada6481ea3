"""What makes a photo's readings doubtful without withholding their values."""

import math
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass

from scoring.findings import Finding, notes, warns
from scoring.measuring.definitions import MEASUREMENTS, Measurement, in_force
from scoring.measuring.landmarks import ABOVE, AHEAD, COLUMNS, LEFT_OF, MOVING, SIDE_VIEWS, STANDING, Pair
from scoring.measuring.photo import Photo
from scoring.measuring.rules_of_thumb import RulesOfThumb
from scoring.measuring.targets import Figure, matching, span
from scoring.measuring.uncertain import Uncertain
from scoring.measuring.withholding import measured

# A difference of two clicks smaller than this many of its standard deviations is no disagreement.
NOISE = 2 * math.sqrt(2)
CONFIDENT = 1.96


@dataclass(frozen=True, slots=True)
class Doubt:
    """A finding, and the landmarks or measurements whose readings it touches."""

    finding: Finding
    landmarks: frozenset[str] = frozenset()
    codes: frozenset[str] = frozenset()

    def touches(self, measurement: Measurement) -> bool:
        return measurement.code in self.codes or not self.landmarks.isdisjoint(measurement.landmarks)


def doubts(photo: Photo, figures: Collection[Figure], rules: RulesOfThumb) -> tuple[Doubt, ...]:
    """Every doubt about a photo, most general first."""
    return (
        *_about_the_picture(photo, rules),
        *_about_order(photo),
        *_about_level(photo),
        *_about_yaw(photo, figures, rules),
        *_about_feet(photo, rules),
    )


def _about_the_picture(photo: Photo, rules: RulesOfThumb) -> Iterable[Doubt]:
    if photo.ground is not None and photo.ground_line is None:
        yield Doubt(warns("ground-clicks-coincide"))
    if photo.roll is not None and abs(photo.roll.value) > rules.limits.roll_deg:
        yield Doubt(warns("picture-turned", roll_deg=photo.roll.value))
    seen = STANDING + MOVING if photo.view in SIDE_VIEWS else COLUMNS
    if foreign := [name for name in photo.landmarks if name not in seen]:
        yield Doubt(notes("landmarks-not-measured-here", landmarks=foreign))
    if outside := [name for name, place in photo.landmarks.items() if not _inside(place, photo.size)]:
        yield Doubt(warns("outside-picture", landmarks=outside), frozenset(outside))


def _inside(place: tuple[float, float], size: tuple[float, float] | None) -> bool:
    return size is None or (0 <= place[0] <= size[0] and 0 <= place[1] <= size[1])


def _about_order(photo: Photo) -> Iterable[Doubt]:
    """Landmarks that lie to each other as on no dog: above and below, ahead and behind, left and right."""
    points = photo.dog_points
    noise = NOISE * photo.click_sd
    up = {name: -point.y.value for name, point in points.items()}
    if crossed := culprits(up, ABOVE, noise):
        yield _order("crossed-landmarks", crossed)
    along = {name: point.x.value for name, point in points.items()}
    if photo.view in SIDE_VIEWS:
        if disagreeing := culprits(along, AHEAD, noise):
            yield _order("facing-disagrees", disagreeing)
    elif swapped := culprits({name: -x for name, x in along.items()}, LEFT_OF, noise):
        yield _order("left-and-right-crossed", swapped)


def _order(code: str, landmarks: tuple[str, ...]) -> Doubt:
    return Doubt(warns(code, landmarks=list(landmarks)), frozenset(landmarks))


def culprits(along: Mapping[str, float], pairs: Iterable[Pair], noise: float) -> tuple[str, ...]:
    """The landmarks that break more of their pairs than they keep, or all of the broken pairs where none does.

    A pair is broken where its first landmark lies behind its second by more than `noise` pixels.
    """
    balance: dict[str, int] = {}
    broken: dict[str, None] = {}
    for first, second in pairs:
        if first in along and second in along:
            wrong = along[second] - along[first] > noise
            for name in (first, second):
                balance[name] = balance.get(name, 0) + (1 if wrong else -1)
            if wrong:
                broken.update({first: None, second: None})
    return tuple(name for name in broken if balance[name] > 0) or tuple(broken)


def _about_level(photo: Photo) -> Iterable[Doubt]:
    """Camera roll goes straight into a plumb line; into spans along and across the dog only at second order."""
    if photo.ground_line is not None:
        return
    unlevelled = [m for m in in_force(photo.view, photo.landmarks) if m.levelling in ("for-reading", "better")]
    for measurement in unlevelled:
        if isinstance(measured(photo, measurement), Uncertain):
            touched = frozenset({measurement.code} if measurement.levelling == "for-reading" else ())
            yield Doubt(warns("not-levelled", measurement=measurement.code), codes=touched)


def _about_yaw(photo: Photo, figures: Collection[Figure], rules: RulesOfThumb) -> Iterable[Doubt]:
    """A dog that stands at an angle to the picture is foreshortened along its length, by the cosine of the yaw."""
    if photo.view != "standing-side":
        return
    ratio = next(m for m in MEASUREMENTS if m.code == "length-ratio")
    value = measured(photo, ratio)
    if isinstance(value, Finding):
        return
    low, high = _possible(ratio, figures, rules)
    margin = CONFIDENT * ratio.sd(value, photo.click_sd)
    facts = {"length_ratio": value.value, "lowest": low, "highest": high}
    if value.value + margin < low:
        turned = math.degrees(math.acos(max(value.value / low, 0.0)))
        yield Doubt(warns("likely-yaw", turned_deg=turned, **facts), frozenset(photo.landmarks))
    elif value.value - margin > high:
        yield Doubt(warns("length-ratio-impossible", **facts), codes=frozenset({ratio.code}))


def _possible(ratio: Measurement, figures: Collection[Figure], rules: RulesOfThumb) -> tuple[float, float]:
    found = matching(ratio, figures, rules)
    if not found:
        return rules.limits.length_ratio_low, rules.limits.length_ratio_high
    low, high = span(found)
    return low * (1 - rules.limits.breed_slack_short), high * (1 + rules.limits.breed_slack_long)


def _about_feet(photo: Photo, rules: RulesOfThumb) -> Iterable[Doubt]:
    """Seen from the front or rear, feet at unequal heights in the picture say that one stands nearer: a yaw."""
    points = photo.level_points
    top = {"front": "shoulder", "rear": "hip"}.get(photo.view)
    names = tuple(f"{side}-{part}" for part in (top, "foot") for side in ("left", "right"))
    if top is None or any(name not in points for name in names):
        return
    left_top, right_top, left, right = (points[name].y for name in names)
    leg = ((left - left_top) + (right - right_top)).times(0.5)
    apart = abs(left - right)
    allowed = rules.limits.feet_apart * abs(leg.value)
    if math.isfinite(apart.value) and apart.value - CONFIDENT * apart.sd(photo.click_sd) > allowed:
        yield Doubt(warns("likely-yaw", feet_apart_px=apart.value, allowed_px=allowed), frozenset(photo.landmarks))
