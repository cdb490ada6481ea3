"""Whether a paper is the signed version: what the code on a printed critique leads to."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_GET

from ringside.papers.build import DIGITS
from ringside.results.actions import fingerprint as made_of
from ringside.results.models import Critique
from ringside.results.queries import title_of
from ringside.results.wording import result_in


@require_GET
def check(request: HttpRequest, fingerprint: str) -> HttpResponse:
    """Shows what the signed version says, so that a paper can be held beside it; nothing about any person."""
    found = _signed(fingerprint.lower())
    if found is None:
        return _answer(request, {"fingerprint": fingerprint[:64]}, 404)
    entry = found.entry
    breed = entry.show_class.show_breed
    context = {
        "critique": found,
        "dog": entry.dog.name,
        "title": title_of(entry.show_class),
        "result": result_in(found.language, found.paper["sex"], found.paper.get("grade"), found.paper.get("place")),
        "is_corrected": entry.corrections.exists(),
        "show": breed.show.name,
        "day": entry.show_class.appointed.day or breed.show.first_day,
    }
    return _answer(request, context, 200)


def _signed(fingerprint: str) -> Critique | None:
    """The published critique of this fingerprint, if it is whole: made again of its content, it gives the same."""
    if len(fingerprint) < DIGITS or not fingerprint.isalnum():
        return None
    found = (
        Critique.objects.published()
        .filter(fingerprint__startswith=fingerprint)
        .select_related("entry__dog", "entry__show", "entry__show_class__show_breed__show")
        .first()
    )
    whole = found and found.fingerprint == made_of(found.entry_id, found.paper, found.sentences)
    return found if whole else None


def _answer(request: HttpRequest, context: dict[str, object], status: int) -> HttpResponse:
    answer = render(request, "home/check.html", context, status=status)
    answer.headers["X-Robots-Tag"] = "noindex, nofollow"
    return answer
