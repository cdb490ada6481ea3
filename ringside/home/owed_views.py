"""What the signed-in exhibitor owes and has paid, show by show."""

from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_GET

from ringside.core.paging import page_asked
from ringside.fees.one import accounts_of


@login_required
@require_GET
def owed(request: HttpRequest) -> HttpResponse:
    return render(request, "home/owed.html", {"page": accounts_of(request.user, page_asked(request.GET))})
