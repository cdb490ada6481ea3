"""The front page and the exhibitor's face."""

from dataclasses import dataclass

from django.conf import settings
from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import reverse

from ringside.home import queries
from ringside.people.models import Account
from ringside.results.access import access_critique
from ringside.results.queries import title_of
from ringside.shows.queries import shows_of


@dataclass(frozen=True)
class Face:
    code: str
    title: str
    words: str
    button: str


FACES = (
    Face("judge", "The judge", "Ring 1 on a tablet: mark, grade, place and sign a class.", "Open the ring"),
    Face(
        "secretary",
        "The secretary",
        "The office: entries from a file, numbers, results as they come.",
        "Open the office",
    ),
    Face("exhibitor", "The exhibitor", "Own dogs only: read the critique, take it home as a PDF.", "Open my dogs"),
)
LANGUAGE_NAMES = {"en": "English", "fr": "français", "de": "Deutsch", "es": "español"}


def front(request: HttpRequest) -> HttpResponse:
    context = {
        "faces": FACES if settings.DEMO else (),
        "rings": queries.rings_of(request.user),
        "works_in_office": bool(shows_of(request.user)) or getattr(request.user, "runs_site", False)
        if isinstance(request.user, Account)
        else False,
        "is_new": not Account.objects.exists(),
    }
    return render(request, "home/front.html", context)


@login_required
def mine(request: HttpRequest) -> HttpResponse:
    return render(request, "home/mine.html", {"entries": queries.entries_of(request.user)})


@login_required
def critique(request: HttpRequest, critique_id: int) -> HttpResponse:
    found = access_critique(request.user, critique_id)
    show_class = found.entry.show_class
    languages = [
        {"name": LANGUAGE_NAMES[one.language], "address": reverse("papers:critique", args=[one.pk])}
        for one in queries.languages_of(found)
    ]
    context = {
        "critique": found,
        "result": queries.result_words(found.entry),
        "title": title_of(show_class),
        "day": show_class.show_breed.day or show_class.show_breed.show.first_day,
        "judge": show_class.show_breed.judge,
        "languages": languages,
        "drawing": queries.drawing_of(found),
    }
    return render(request, "home/critique.html", context)
