"""Lengths in centimetres, from a wither height measured on the dog."""

import math
from dataclasses import dataclass

from scoring.measuring.definitions import wither_height
from scoring.measuring.geometry import distance
from scoring.measuring.photo import Photo
from scoring.measuring.uncertain import Uncertain


@dataclass(frozen=True, slots=True)
class Centimetres:
    value: float
    sd: float


def in_centimetres(of_height: Uncertain, click_sd: float, height: Centimetres) -> Centimetres:
    """A ratio to the wither height as a length in cm.

    Rule: length = ratio x H; its variance (H SD(ratio))^2 + (ratio SD(H))^2, first order, the measuring of the height
    independent of the clicks. With L and h pixels this is L k sqrt((sH/H)^2 + 2 s^2/h^2 + 2 s^2/L^2), k = H/h, for
    clicks that are not shared.
    Limits: everything measured must lie in the plane of the withers and the near front foot.
    """
    from_clicks = height.value * of_height.sd(click_sd)
    return Centimetres(of_height.value * height.value, math.hypot(from_clicks, of_height.value * height.sd))


def body_length(photo: Photo) -> Uncertain | None:
    """Point of shoulder to pin bone along the slant, over the wither height; None where a click of it is missing.

    Limits: of the dog's outline in the picture; a dog standing at an angle is longer.
    """
    names = ("point-of-shoulder", "pin-bone", "withers", "front-foot")
    if any(name not in photo.landmarks for name in names):
        return None
    shoulder, pin_bone, withers, foot = (photo.dog_points[name] for name in names)
    try:
        return distance(shoulder, pin_bone) / wither_height(withers, foot)
    except ZeroDivisionError:
        return None
