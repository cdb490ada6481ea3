"""A critique as a page shows it, whoever reads."""

from typing import Any

from django.urls import reverse

from ringside.home import queries
from ringside.papers.build import labels, whose_words
from ringside.people.models import Language
from ringside.photos.access import reader_of
from ringside.photos.bearing import by_point
from ringside.photos.pages import reading_page
from ringside.photos.queries import photos_of_entry
from ringside.results.award_corrections import award_changes_of
from ringside.results.models import Critique
from ringside.results.queries import title_of


def reading_of(critique: Critique) -> dict[str, Any]:
    """What the reading page needs: nothing of it is about the owner."""
    show_class = critique.entry.show_class
    return {
        "critique": critique,
        "paragraphs": [line for line in " ".join(critique.sentences).splitlines() if line.strip()],
        "whose": whose_words(critique),
        "own_words": labels()[critique.language]["own"],
        "of_the_remark": labels()[critique.language]["remark"],
        "result": queries.result_words(critique.entry),
        "awards": queries.awards_won([critique.entry]).get(critique.entry.pk, []),
        "award_changes": award_changes_of([critique.entry]).get(critique.entry.pk, []),
        "title": title_of(show_class),
        "day": show_class.appointed.day or show_class.show_breed.show.first_day,
        "judge": critique.signed_by,
        "drawing": queries.drawing_of(critique),
        "language_name": Language(critique.language).label,
    }


def measured_beside(user: Any, critique: Critique) -> dict[str, Any]:
    """The photos of that day and what they read beside the marks, for whoever may see the dog's photos."""
    if reader_of(user, critique.entry.dog) is None:
        return {}
    photos = list(photos_of_entry(critique.entry))
    if not photos:
        return {}
    first = photos[0]
    page = reading_page(first, critique.entry.dog.name, reverse("photos:picture", args=[first.public_id]))
    return {"measured": page, "photos": photos, "beside": by_point(photos)}
