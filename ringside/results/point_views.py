"""The points of a show on the results desk, and all that is still missing."""

from django.contrib.auth.decorators import login_required
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_GET

from ringside.results.points import count_name, points_of
from ringside.results.still_missing import lacks_of
from ringside.shows.access import access_show
from ringside.shows.books import rules_of
from ringside.shows.known import notes_on_points

PER_PAGE = 200
BREEDS_PER_PAGE = 100


@login_required
@require_GET
def points(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug)
    book = rules_of(show)
    context = {
        "show": show, "stage": "results", "book": book,
        "page": Paginator(points_of(show), BREEDS_PER_PAGE).get_page(request.GET.get("page")),
        "counts": [count_name(name) for name in book.points.counts] if book.points else [],
        "notes": notes_on_points(book),
    }  # fmt: skip
    return render(request, "results/points.html", context)


@login_required
@require_GET
def missing(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug)
    page = Paginator(lacks_of(show), PER_PAGE).get_page(request.GET.get("page"))
    return render(request, "results/missing.html", {"show": show, "stage": "results", "page": page})
