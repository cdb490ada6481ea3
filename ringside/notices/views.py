"""Telling the exhibitors: who gets what, sent once, and who was not reached."""

from collections import Counter

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext_lazy as _
from django.utils.translation import ngettext
from django.views.decorators.http import require_GET, require_POST

from ringside.core.paging import query_without_page
from ringside.notices import actions
from ringside.notices.models import Notice
from ringside.notices.queries import Standing, dogs_of, lacking, standings_of
from ringside.shows.access import access_show, roles_of
from ringside.shows.may import may
from ringside.shows.models import Show

PER_PAGE = 100
STATES = {
    "to tell": _("not told yet"),
    "changed": _("changed since it was told"),
    "waiting": _("waits to be sent"),
    "failed": _("not reached"),
    "told": _("told"),
}


@login_required
@require_GET
def desk(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug)
    dogs = dogs_of(show)
    standings, by_paper = standings_of(show, dogs)
    wanted = request.GET.get("state", "")
    shown = [one for one in standings if wanted not in STATES or one.state == wanted]
    page = Paginator(shown, PER_PAGE).get_page(request.GET.get("page"))
    counts = Counter(one.state for one in standings)
    context = {
        "show": show, "stage": "papers", "page": page, "query": query_without_page(request),
        "wanted": wanted, "by_paper": by_paper,
        "rows": [(one, STATES[one.state]) for one in page.object_list],
        "states": [(state, words, counts[state]) for state, words in STATES.items() if counts[state]],
        "due": sum(one.is_due for one in standings), "everybody": len(standings),
        "lacking": dict(lacking(show, dogs)), "example": _example(show, standings, request),
        "to_print": len(by_paper) + counts["failed"],
        "may_send": may(roles_of(request.user, show), "send-notices"), **_progress(show),
    }  # fmt: skip
    return render(request, "notices/desk.html", context)


def _example(show: Show, standings: list[Standing], request: HttpRequest) -> str:
    """The first letter as it would go out now, in its exhibitor's language."""
    first = next((one.recipient for one in standings if one.is_due), None)
    return str(actions.letter_to(show, first, request.build_absolute_uri("/")).body) if first else ""


def _progress(show: Show) -> dict[str, int]:
    states = Counter(Notice.objects.filter(show=show).values_list("state", flat=True))
    return {"waiting": states["waiting"], "sent": states["sent"], "failed": states["failed"]}


@login_required
@require_POST
def send(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug, "send-notices")
    count = actions.put_in_line(who=request.user, show=show, even_incomplete="even_incomplete" in request.POST)
    words = ngettext("{count} letter is in line.", "{count} letters are in line.", count)
    messages.success(request, words.format(count=count))
    return redirect("notices:desk", slug=slug)


@login_required
@require_POST
def advance(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug, "send-notices")
    actions.advance(who=request.user, show=show, site=request.build_absolute_uri("/"))
    if not request.headers.get("HX-Request"):
        return redirect("notices:desk", slug=slug)
    return render(request, "notices/desk.html#progress", {"show": show, "may_send": True, **_progress(show)})
