"""A show's published results for everybody: by class, with the critiques where the show makes them public."""

from typing import Any

from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, render
from django.views.decorators.http import require_GET

from ringside.entries.consents.queries import dogs_kept_private
from ringside.home.queries import in_readers_language
from ringside.results import queries
from ringside.results.models import Critique
from ringside.shows.models import Show

CLASSES_PER_PAGE = 40


@require_GET
def results(request: HttpRequest, slug: str) -> HttpResponse:
    """Number, dog, grade and place of what is published; no owner, no breeder, no address."""
    show = get_object_or_404(Show, slug=slug)
    published = [one for one in queries.classes_of(show) if hasattr(one, "publication")]
    page = Paginator(published, CLASSES_PER_PAGE).get_page(request.GET.get("page"))
    found = queries.compiled_many(list(page))
    return render(request, "home/results.html", {"show": show, "page": page, "classes": _told(show, found)})


def _told(show: Show, found: list[queries.Compiled]) -> list[dict[str, Any]]:
    critiques: dict[int, int] = {}
    if show.critiques_public:
        rows = Critique.objects.published().filter(entry__show_class__in=[one.show_class for one in found])
        open_to_all = rows.exclude(entry__dog__in=dogs_kept_private(show)).only("entry")
        critiques = {entry: one.pk for entry, one in in_readers_language(open_to_all).items()}
    return [
        {
            "title": one.title,
            "told": one.show_class.appointed,
            "rows": [(row, critiques.get(row.entry.pk)) for row in one.rows],
        }
        for one in found
    ]
