"""A dog's photos, the page to mark one, and its reading."""

import uuid

from django.contrib.auth.decorators import login_required
from django.http import FileResponse, Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.csrf import ensure_csrf_cookie
from django.views.decorators.http import require_GET, require_POST

from ringside.core.spoken import words_for_scripts
from ringside.people.models import Account
from ringside.photos import actions, queries
from ringside.photos.access import access_dog, access_photo, own_dog, own_photo
from ringside.photos.marking import marking_page
from ringside.photos.over_time import GROWING_MONTHS, charts
from ringside.photos.pages import picture_of, reading_page
from ringside.shows.access import access_show


@login_required
@require_GET
def dog(request: HttpRequest, dog_id: int) -> HttpResponse:
    found, reader = access_dog(request.user, dog_id)
    context = {"dog": found, "reader": reader, "photos": queries.photos_of(found)}
    context["said"] = words_for_scripts()
    return render(request, "photos/dog.html", context)


@login_required
@require_GET
def of_show(request: HttpRequest, slug: str) -> HttpResponse:
    """The office's list of the show's measured photos, by number."""
    show = access_show(request.user, slug)
    context = {"show": show, "stage": "results", "photos": queries.photos_of_show(show)}
    return render(request, "photos/of_show.html", context)


@login_required
@require_GET
def over_time(request: HttpRequest, dog_id: int) -> HttpResponse:
    found, reader = access_dog(request.user, dog_id)
    photos = queries.photos_of(found)
    context = {
        "dog": found,
        "reader": reader,
        "charts": charts(found, photos),
        "undated": photos.filter(taken_on=None).count(),
        "growing_months": GROWING_MONTHS,
    }
    return render(request, "photos/over_time.html", context)


@login_required
@require_GET
@ensure_csrf_cookie
def mark(request: HttpRequest, dog_id: int) -> HttpResponse:
    found = own_dog(request.user, dog_id)
    again = request.GET.get("photo", "")
    photo = own_photo(request.user, uuid.UUID(again)) if _is_id(again) else None
    if photo is not None and photo.dog_id != found.pk:
        raise Http404
    page = {**marking_page(found, photo, queries.click_sd_of_width(request.user)), **words_for_scripts()}
    return render(request, "photos/mark.html", {"dog": found, "page": page})


def _is_id(text: str) -> bool:
    try:
        uuid.UUID(text)
    except ValueError:
        return False
    return True


@login_required
@require_GET
def reading(request: HttpRequest, public_id: uuid.UUID) -> HttpResponse:
    photo, reader = access_photo(request.user, public_id)
    page = reading_page(photo, reader.name, reverse("photos:picture", args=[public_id]))
    if photo.share_token and reader.may_change:
        page["share_address"] = request.build_absolute_uri(reverse("photos:shared", args=[photo.share_token]))
    return render(request, "photos/reading.html", {**page, "may_change": reader.may_change})


@login_required
@require_GET
def picture(request: HttpRequest, public_id: uuid.UUID) -> FileResponse:
    photo, _ = access_photo(request.user, public_id)
    return picture_of(photo)


@login_required
@require_POST
def delete(request: HttpRequest, public_id: uuid.UUID) -> HttpResponse:
    photo = own_photo(request.user, public_id)
    assert isinstance(request.user, Account)
    actions.delete_photo(by=request.user, photo=photo)
    return redirect("photos:dog", photo.dog_id)
