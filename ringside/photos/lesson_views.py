"""The public pages that teach what a judge looks at, one a breed."""

from operator import itemgetter

from django.http import Http404, HttpRequest, HttpResponse, JsonResponse
from django.shortcuts import render
from django.utils.translation import gettext
from django.views.decorators.cache import cache_control
from django.views.decorators.http import require_GET

from ringside.core.spoken import words_for_scripts
from ringside.drawings.outline import outline
from ringside.drawings.portrait import build_of
from ringside.photos.lesson import TURNS, kinds, parts_of, section_words, turned
from scoring.standards.loader import codes, load
from scoring.standards.model import BreedStandard, UnknownStandard


@require_GET
def breeds(request: HttpRequest) -> HttpResponse:
    named = [(one, gettext(one.name)) for one in map(load, codes())]
    return render(request, "photos/breeds.html", {"breeds": sorted(named, key=itemgetter(1))})


@require_GET
def breed(request: HttpRequest, breed: str) -> HttpResponse:
    standard = _standard(breed)
    sections = [(code, section_words(code), parts) for code, parts in parts_of(standard)]
    turns = [part.point.code for _, _, parts in sections for part in parts if part.turn]
    drawn = outline(build_of(breed))
    page = {"kinds": kinds(breed), "first": turns[0] if turns else None, **words_for_scripts()}
    return render(
        request,
        "photos/lesson.html",
        {
            "standard": standard,
            "breed": gettext(standard.name),
            "sections": sections,
            "page": page,
            "height": drawn.height,
        },
    )


@require_GET
@cache_control(public=True, max_age=3600)
def point(request: HttpRequest, breed: str, point: str) -> HttpResponse:
    """One point's drawings from end to end."""
    _standard(breed)
    if point not in TURNS:
        raise Http404
    try:
        return JsonResponse(turned(breed, point))
    except KeyError:
        raise Http404 from None


def _standard(breed: str) -> BreedStandard:
    try:
        return load(breed)
    except UnknownStandard:
        raise Http404 from None
