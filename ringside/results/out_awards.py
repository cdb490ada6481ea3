"""Awards, finals, points and corrections of a show as other programs read them, beside the classes of `out`."""

from collections.abc import Iterator
from typing import Any

import tablib
from django.utils import translation

from ringside.core import exports
from ringside.entries.models import Entry
from ringside.entries.reading.cells import guarded
from ringside.results.award_corrections import award_corrections_of
from ringside.results.awards import BreedAwards, awards_of, breeds_of
from ringside.results.finals import Stands, breed_words, finals_of
from ringside.results.points import points_of
from ringside.shows.models import Show

HEADINGS = ("Award", "Breed or group", "Sex", "Place", "Number", "Name of dog", "Studbook no.", "Judge", "Points")


def awards_json(show: Show) -> dict[str, Any]:
    """What is published of awards and finals, the points of the show, and what was corrected in them."""
    return {
        "awards": [line for found in awards_of(breeds_of(show)) for line in _of_breed(found)],
        "finals": [line for stand in finals_of(show).stands for line in _of_final(stand)],
        "points": list(_points(show)),
        "award_corrections": [
            {
                "award": one.what, "before": one.before, "after": one.after, "cause": one.correction.cause,
                "why": one.correction.why, "at": one.correction.at.isoformat(),
            }
            for one in award_corrections_of(show)
        ],
    }  # fmt: skip


# A file says the same whoever takes it away.
@translation.override("en")
def awards_table(show: Show, kind: str) -> bytes:
    """Every published award and place in a final as "csv" (UTF-8 with its mark, semicolons) or "xlsx"."""
    table = tablib.Dataset(headers=HEADINGS)
    told = awards_json(show)
    points = {one["number"]: one["points"] for one in told["points"]}
    for line in (*told["awards"], *told["finals"]):
        if line["state"] == "given":
            where = line.get("breed_name") or line.get("group") or ""
            cells = [line["award_name"], where, line.get("sex"), line.get("place"), line["number"], line["dog"]]
            cells += [line["studbook"], line["judge"], points.get(line["number"])]
            table.append([guarded("" if cell is None else str(cell)) for cell in cells])
    return exports.written(table, kind)


def _of_breed(found: BreedAwards) -> Iterator[dict[str, Any]]:
    breed = found.card.breed
    if found.state != "published":
        return
    judge = breed.appointed.judge
    for line in found.lines:
        if line.state != "undecided":
            yield {
                "award": line.offered.award.code, "award_name": line.offered.award.name, "sex": line.offered.sex,
                "breed": breed.breed, "variety": breed.variety or None, "breed_name": found.title,
                "judge": judge.name if judge else None, "state": line.state, **_dog(line.entry),
            }  # fmt: skip


def _of_final(stand: Stands) -> Iterator[dict[str, Any]]:
    if stand.row is None or not stand.row.published_at:
        return
    for place, entry in stand.placed:
        yield {
            "award": stand.offered.award.code, "award_name": stand.title, "group": stand.offered.group or None,
            "place": place, "judge": stand.row.judge.name if stand.row.judge else None, "state": "given",
            "breed_name": breed_words(entry), **_dog(entry),
        }  # fmt: skip


def _dog(entry: Entry | None) -> dict[str, Any]:
    if entry is None:
        return {"number": None, "dog": None, "studbook": None}
    return {"number": entry.number, "dog": entry.dog.name, "studbook": entry.dog.studbook}


def _points(show: Show) -> Iterator[dict[str, Any]]:
    for breed in points_of(show):
        for one in breed.earned:
            yield {"breed": breed.breed.breed, "points": one.points, "wins": list(one.wins), **_dog(one.entry)}
