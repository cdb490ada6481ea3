"""One-click doors into the demo show; these addresses exist only where DEMO is set."""

from django.contrib.auth import login
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.views.decorators.http import require_POST

from ringside.home import demo


@require_POST
def enter(request: HttpRequest, face: str) -> HttpResponse:
    if face not in demo.FACES:
        raise Http404
    login(request, demo.account_of(face))
    return redirect(demo.opening_page(face))
