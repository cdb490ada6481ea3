"""How the tests ask a photo for one measurement."""

from scoring.measuring.definitions import Measurement, in_force
from scoring.measuring.doors import measure
from scoring.measuring.measure import measure_photo
from scoring.measuring.photo import Photo
from tests.measuring.dogs import Pictured


def named(photo: Photo, code: str) -> Measurement:
    return next(one for one in in_force(photo.view, photo.landmarks) if one.code == code)


def value(photo: Photo, code: str) -> tuple[float | None, float | None]:
    found = next(one for one in measure_photo(photo).measurements if one.measurement.code == code)
    return (found.quantity.value if found.quantity else None), found.sd


def rows(dog: Pictured, **more: object) -> dict[str, dict]:
    """The door's measurements by code."""
    return {row["code"]: row for row in measure({**dog.door_input(), **more})["measurements"]}


def values(dog: Pictured, **more: object) -> dict[str, tuple[float | None, float | None]]:
    return {code: (row["value"], row["sd"]) for code, row in rows(dog, **more).items()}


def findings(dog: Pictured, code: str, **more: object) -> list[dict]:
    """The facts of the door's findings with this code."""
    return [found["facts"] for found in measure({**dog.door_input(), **more})["findings"] if found["code"] == code]
