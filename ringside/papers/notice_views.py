"""The letters of number, ring and time for whoever has no address or was not reached."""

from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_GET

from ringside.core.denied import NotNow
from ringside.notices.queries import to_print
from ringside.papers.notice_letters import notice_letters_pdf
from ringside.papers.views import as_file, size_of
from ringside.shows.access import access_show


@login_required
@require_GET
def letters(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug)
    recipients = to_print(show)
    if not recipients:
        raise NotNow("Every exhibitor has an address, and every letter sent has gone out: there is none to print.")
    return as_file(notice_letters_pdf(show, recipients, size_of(request)), f"letters-{slug}")
