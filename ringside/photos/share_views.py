"""A reading that its owner shares: whoever is given the address reads, until it is withdrawn."""

import uuid

from django.contrib.auth.decorators import login_required
from django.http import FileResponse, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.http import require_GET, require_POST

from ringside.people.models import Account
from ringside.photos import actions
from ringside.photos.access import own_photo, shared_photo
from ringside.photos.pages import picture_of, reading_page


@login_required
@require_POST
def share(request: HttpRequest, public_id: uuid.UUID) -> HttpResponse:
    assert isinstance(request.user, Account)
    actions.share_photo(by=request.user, photo=own_photo(request.user, public_id))
    return redirect(reverse("photos:reading", args=[public_id]) + "#share")


@login_required
@require_POST
def withdraw(request: HttpRequest, public_id: uuid.UUID) -> HttpResponse:
    assert isinstance(request.user, Account)
    actions.withdraw_share(by=request.user, photo=own_photo(request.user, public_id))
    return redirect(reverse("photos:reading", args=[public_id]) + "#share")


@require_GET
def shared(request: HttpRequest, token: str) -> HttpResponse:
    photo = shared_photo(token)
    page = reading_page(photo, photo.dog.name, reverse("photos:shared-picture", args=[token]))
    answer = render(request, "photos/shared.html", page)
    return _not_indexed(answer)


@require_GET
def shared_picture(request: HttpRequest, token: str) -> FileResponse:
    answer = picture_of(shared_photo(token))
    _not_indexed(answer)
    return answer


def _not_indexed(answer: HttpResponse | FileResponse) -> HttpResponse:
    answer["X-Robots-Tag"] = "noindex, nofollow"
    answer["Cache-Control"] = "private, no-store"
    return answer
