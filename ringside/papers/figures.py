"""From a kept photo to the figure of a critique, in the critique's language."""

from typing import Any

from ringside.entries.models import Entry
from ringside.papers.measured import Corner, Figure, words
from ringside.photos.drawn import drawn_lines
from ringside.photos.measured import target_words
from ringside.photos.models import Photo
from ringside.photos.queries import photos_of_entry
from ringside.photos.words import OF_LOGARITHM, interval_of, interval_words, number_words


def figure_for(entry: Entry, language: str) -> Figure | None:
    """The first measured photo of the day; None where there is none."""
    photo = next((one for one in photos_of_entry(entry) if one.measured.get("measurements")), None)
    return _figure(photo, language) if photo else None


def _figure(photo: Photo, language: str) -> Figure:
    drawn = drawn_lines(photo)
    with photo.file.open("rb") as file:
        content = file.read()
    read = [one for one in photo.measured["measurements"] if one["value"] is not None]
    return Figure(
        jpeg=content,
        width=photo.width,
        height=photo.height,
        lines=[(line.kind, _corners(line.points)) for line in drawn.lines],
        dots=[(dot.x, dot.y) for dot in drawn.dots],
        labels=[(label.words, (label.x, label.y)) for label in drawn.labels],
        rows=[_row(one, words()[language]) for one in sorted(read, key=lambda one: one["target"] is None)],
    )


def _corners(points: str) -> list[Corner]:
    pairs = (pair.split(",") for pair in points.split())
    return [(float(x), float(y)) for x, y in pairs]


def _row(one: dict[str, Any], told: dict[str, Any]) -> tuple[str, ...]:
    code, unit, target = one["code"], one["unit"], one["target"]
    star = " *" if target and target["kind"] == "rule-of-thumb" else ""
    return (
        told["names"][code],
        number_words(one["value"], unit),
        _interval(code, one["value"], one["sd"], unit),
        f"{target_words(target, unit)}{star}" if target else "",
        told["readings"][one["reading"]],
    )


def _interval(code: str, value: float, sd: float, unit: str) -> str:
    """As the pages write it; between two ends a dash, for which the column is wide enough in every language."""
    if code not in OF_LOGARITHM:
        return interval_words(code, value, sd, unit)
    return " – ".join(number_words(end, unit) for end in interval_of(code, value, sd))
