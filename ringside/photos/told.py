"""What a device says of a photo, read and checked: view, day, height, level line, landmarks."""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any

from ringside.core.denied import Denied
from ringside.photos.models import View
from scoring.bad_input import BadInput, a_date, a_number, an_object, one_of, value_of
from scoring.measuring.doors import read_photo
from scoring.measuring.photo import Place

MOST_LETTERS = 20_000


@dataclass(frozen=True, slots=True)
class Told:
    view: str
    image: tuple[int, int]
    landmarks: Mapping[str, list[float]]
    ground: list[list[float]] | None
    again: Mapping[str, Place]
    taken_on: date | None
    withers_height_cm: float | None


def read_told(text: str, today: date) -> Told:
    """The device's words as values. Raises Denied with what is wrong."""
    if len(text) > MOST_LETTERS:
        raise Denied("The marks were not understood: there are far too many.", 422)
    try:
        return _told(an_object(json.loads(text, parse_constant=_no_number), ""), today)
    except (ValueError, RecursionError):
        raise Denied("The marks were not understood: what was sent is not JSON.", 422) from None
    except BadInput as error:
        raise Denied("The marks were not understood: {error}", 422, error=error) from None


def _no_number(word: str) -> float:
    raise ValueError(word)


def _told(source: Mapping[str, Any], today: date) -> Told:
    asked = {name: source.get(name) for name in ("view", "landmarks", "ground", "image")}
    photo = read_photo({**asked, "click_sd_px": 0})
    again = value_of(source, "again", default=None) or {}
    repeated = read_photo({**asked, "landmarks": again, "click_sd_px": 0})
    if photo.size is None:
        raise BadInput("missing-key", "Give the size of the picture.", "image")
    return Told(
        view=one_of(photo.view, View.values, "view"),
        image=(round(photo.size[0]), round(photo.size[1])),
        landmarks={name: list(place) for name, place in photo.landmarks.items()},
        ground=[list(place) for place in photo.ground] if photo.ground else None,
        again=repeated.landmarks,
        taken_on=_day(source.get("taken_on"), today),
        withers_height_cm=_height(source.get("withers_height_cm")),
    )


def _day(text: Any, today: date) -> date | None:
    if not text:
        return None
    day = a_date(text, "taken_on")
    # A device east of the server may be a day ahead.
    if day > today + timedelta(days=1):
        raise BadInput("out-of-range", "The day lies in the future: correct when the photo was taken.", "taken_on")
    return day


def _height(value: Any) -> float | None:
    if value is None or value == "":
        return None
    return a_number(value, "withers_height_cm", low=10, high=120)
