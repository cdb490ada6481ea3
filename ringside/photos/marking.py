"""What the marking page knows: per view the landmarks in order, where each lies on a drawn dog, the lines to draw."""

from dataclasses import asdict
from typing import Any

from django.urls import reverse
from django.utils.translation import override

from ringside.core.spoken import words_for_scripts
from ringside.core.tongues import translated
from ringside.dogs.models import Dog
from ringside.photos.intake import LONGEST_SIDE
from ringside.photos.marks import LANDMARKS, LINES
from ringside.photos.measured import ASSUMED_SD_OF_WIDTH
from ringside.photos.models import Photo, View
from ringside.photos.schemes import scheme
from ringside.photos.words import NAMES
from scoring.measuring.definitions import MEASUREMENTS


def marking_page(dog: Dog, photo: Photo | None, click_sd_of_width: float) -> dict[str, Any]:
    """Everything as JSON, so that the page needs nothing more from the network until it sends."""
    return {
        **of_any_dog(dog.breed, click_sd_of_width),
        "dog": dog.pk,
        "name": dog.name,
        "send": reverse("photos:send", args=[dog.pk, "00000000-0000-0000-0000-000000000000"]),
        "photo": _kept(photo) if photo else None,
    }


def of_any_dog(breed: str = "", click_sd_of_width: float = ASSUMED_SD_OF_WIDTH) -> dict[str, Any]:
    """What every dog of a breed has in common; of no breed in particular, for the page that the ring's tablets keep."""
    views = [_view(code, name, breed) for code, name in View.choices]
    return {"clickSdOfWidth": click_sd_of_width, "longestSide": LONGEST_SIDE, "views": views}


def tongues() -> dict[str, dict[str, Any]]:
    """By language, what the page that tablets keep says in it, and the names of `of_any_dog` by their English."""
    found = {}
    with override("en"):
        english = [str(one) for one in _names()]
    for code in translated():
        with override(code):
            found[code] = {**words_for_scripts(), "names": dict(zip(english, map(str, _names()), strict=True))}
    return found


def _names() -> list[Any]:
    marked = [part for view in LANDMARKS.values() for one in view for part in (one.name, one.where)]
    return [*(name for _, name in View.choices), *marked, *(NAMES[one.code].name for one in MEASUREMENTS)]


def _view(code: str, name: str, breed: str) -> dict[str, Any]:
    drawn = scheme(code, breed)
    return {
        "code": code,
        "name": name,
        "landmarks": [asdict(landmark) for landmark in LANDMARKS[code]],
        "lines": [asdict(line) for line in LINES[code]],
        "numbers": _numbers(code),
        "scheme": {"size": drawn.size, "paths": drawn.paths, "places": drawn.places},
    }


def _numbers(view: str) -> list[dict[str, Any]]:
    rows = {one.code: one for one in MEASUREMENTS if one.view == view}
    return [
        {"code": code, "name": NAMES[code].name, "unit": one.unit, "ofLogarithm": one.sd_of_logarithm}
        for code, one in rows.items()
    ]


def _kept(photo: Photo) -> dict[str, Any]:
    """A photo that is marked anew: its picture comes from the server, its marks from here."""
    return {
        "id": str(photo.public_id),
        "picture": reverse("photos:picture", args=[photo.public_id]),
        "view": photo.view,
        "landmarks": photo.landmarks,
        "ground": photo.ground,
        "takenOn": photo.taken_on.isoformat() if photo.taken_on else "",
        "height": photo.withers_height_cm,
        "width": photo.width,
        "high": photo.height,
    }
