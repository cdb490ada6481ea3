"""The office's papers: one page that offers them, one address that prints them."""

from collections.abc import Callable
from dataclasses import dataclass

from django.contrib.auth.decorators import login_required
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.utils import translation
from django.utils.translation import gettext_lazy as _
from django.views.decorators.http import require_GET

from ringside.entries.models import Entry
from ringside.entries.numbering import dogs_without_number
from ringside.papers.absentees import absentees_pdf
from ringside.papers.catalogue import catalogue_pdf
from ringside.papers.gathering import programme_of
from ringside.papers.hand_sheets import hand_sheets_pdf
from ringside.papers.judges_book import judges_book_pdf
from ringside.papers.programme import Programme
from ringside.papers.ring_sheets import ring_sheets_pdf
from ringside.papers.rings import ring_asked, rings_of
from ringside.papers.show_results import show_results_pdf
from ringside.papers.views import as_file, language_of, size_of
from ringside.shows.access import access_show, roles_of
from ringside.shows.may import may


@dataclass(frozen=True)
class Paper:
    code: str
    title: str
    words: str
    print: Callable[[Programme, str], bytes]
    by_ring: bool = False


PAPERS = {
    paper.code: paper
    for paper in (
        Paper(
            "catalogue", _("Catalogue"), _("Every dog by group, breed and class; exhibitors by name."), catalogue_pdf
        ),
        Paper("ring-sheets", _("Ring sheets"), _("For the steward: numbers and boxes."), ring_sheets_pdf, True),
        Paper("judges-book", _("Judges' books"), _("Each judge's classes and awards, to sign."), judges_book_pdf, True),
        Paper("judges-sheets", _("Judge's sheets"), _("To write on by hand: one page a dog."), hand_sheets_pdf, True),
        Paper("absentees", _("Absentees"), _("Who was absent, excused or withdrawn."), absentees_pdf),
        Paper("results", _("Results of the show"), _("Every published class."), show_results_pdf),
    )
}


@login_required
@require_GET
def desk(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug)
    entered = Entry.objects.filter(show=show, state=Entry.State.ENTERED)
    context = {
        "show": show,
        "stage": "papers",
        "papers": PAPERS.values(),
        "rings": rings_of(show),
        "language": language_of(request),
        "dogs": entered.values("dog").distinct().count(),
        "without_number": dogs_without_number(show),
        "may_number": may(roles_of(request.user, show), "number-entries"),
    }
    return render(request, "papers/desk.html", context)


@login_required
@require_GET
def printed(request: HttpRequest, slug: str, code: str) -> HttpResponse:
    show = access_show(request.user, slug)
    paper = PAPERS.get(code)
    if paper is None:
        raise Http404
    ring = ring_asked(request, show) if paper.by_ring else None
    with translation.override(language_of(request)):
        content = paper.print(programme_of(show, ring and ring.pk), size_of(request))
    return as_file(content, f"{code}-{show.slug}{f'-ring-{ring.name}' if ring else ''}")
