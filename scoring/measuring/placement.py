"""What a reading owes to where a landmark was taken to lie, which no click error holds."""

from dataclasses import dataclass, replace

from scoring.measuring.definitions import in_force
from scoring.measuring.photo import Photo
from scoring.measuring.rules_of_thumb import Placement
from scoring.measuring.uncertain import Uncertain
from scoring.measuring.withholding import measured


@dataclass(frozen=True, slots=True)
class Turned:
    """`change` of the measurement, in its unit, when the landmark is moved."""

    placement: Placement
    change: float


def moved(photo: Photo, landmark: str, ahead_px: float, down_px: float) -> Photo:
    """The photo with one landmark moved along the picture, ahead of the dog and downward."""
    x, y = photo.landmarks[landmark]
    place = (x + ahead_px * (photo.facing or 1), y + down_px)
    return replace(photo, landmarks={**photo.landmarks, landmark: place})


def turned_by(photo: Photo, placement: Placement) -> Turned | None:
    """How far a reading turns when a landmark of it lies a little elsewhere; None where it cannot be measured.

    Rule: the measurement is taken again with the landmark moved by parts of the wither height, not to first order.
    """
    if not {"withers", "front-foot", placement.landmark} <= photo.landmarks.keys():
        return None
    height = photo.landmarks["front-foot"][1] - photo.landmarks["withers"][1]
    other = moved(photo, placement.landmark, placement.ahead * height, placement.down * height)
    measurements = (m for m in in_force(photo.view, photo.landmarks) if m.code == placement.measurement)
    for measurement in measurements:
        before, after = measured(photo, measurement), measured(other, measurement)
        if isinstance(before, Uncertain) and isinstance(after, Uncertain):
            return Turned(placement, after.value - before.value)
    return None
