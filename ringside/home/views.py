"""The front page and the exhibitor's face."""

from dataclasses import dataclass

from django.conf import settings
from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import reverse
from django.utils.translation import gettext_lazy as _
from django.views.decorators.http import require_GET

from ringside.dogs.models import Dog
from ringside.entries.own import access_own_dog, owns
from ringside.home import queries
from ringside.home.forms import ReaderForm
from ringside.home.models import CorrectionRequest, Share
from ringside.home.readers import in_force
from ringside.home.reading import measured_beside, reading_of
from ringside.home.sharing import share_of
from ringside.people.models import Account, Language
from ringside.results.access import access_critique, or_sign_in
from ringside.results.titles import title_counts
from ringside.shows.queries import shows_of


@dataclass(frozen=True)
class Face:
    code: str
    title: str
    words: str
    button: str


FACES = (
    Face("judge", _("The judge"), _("Ring 1 on a tablet: mark, grade, place and sign a class."), _("Open the ring")),
    Face(
        "secretary",
        _("The secretary"),
        _("The office: entries from a file, numbers, results as they come."),
        _("Open the office"),
    ),
    Face(
        "exhibitor",
        _("The exhibitor"),
        _("Own dogs only: read the critique, take it home as a PDF."),
        _("Open my dogs"),
    ),
)


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
    assert isinstance(request.user, Account)
    context = {"entries": queries.entries_of(request.user), "others": queries.others_to_read(request.user)}
    return render(request, "home/mine.html", context)


@or_sign_in
def critique(request: HttpRequest, critique_id: int) -> HttpResponse:
    """One critique: for its dog's owner and the office, and for everybody where the show makes critiques public."""
    found = access_critique(request.user, critique_id)
    languages = [
        {
            "name": Language(one.language).label,
            "code": one.language,
            "address": reverse("home:critique", args=[one.pk]),
            "is_here": one.pk == found.pk,
        }
        for one in queries.languages_of(found)
    ]
    is_own = owns(request.user, found.entry.dog)
    share = share_of(found.entry) if is_own else None
    context = {
        **reading_of(found),
        **measured_beside(request.user, found),
        "languages": languages,
        "is_own": is_own,
        "share": share,
        "share_address": share and request.build_absolute_uri(reverse("home:shared", args=[share.token])),
    }
    return render(request, "home/critique.html", context)


@login_required
@require_GET
def dog(request: HttpRequest, dog_id: int) -> HttpResponse:
    return dog_page(request, access_own_dog(request.user, dog_id), ReaderForm())


def dog_page(request: HttpRequest, found: Dog, form: ReaderForm, status: int = 200) -> HttpResponse:
    """One dog over time: every show, what is published of it, who else reads it, what was asked of the office."""
    context = {
        "dog": found,
        "readers": in_force(dog=found).order_by("id"),
        "form": form,
        "entries": queries.entries_of(request.user, found),
        "counts": title_counts(found),
        "shares": Share.objects.filter(entry__dog=found, withdrawn_at=None).select_related("entry__show"),
        "requests": CorrectionRequest.objects.filter(entry__dog=found).select_related("entry__show"),
    }
    return render(request, "home/dog.html", context, status=status)
