"""PDFs on request, each behind the access of what it prints."""

from django.conf import settings
from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.utils.formats import date_format
from django.utils.translation import get_language
from django.views.decorators.http import require_GET

from ringside.core import exports
from ringside.papers.build import check_address, labels, paper_for
from ringside.papers.critique import critique_pdf
from ringside.papers.results import ResultLine, ResultsPaper, results_pdf
from ringside.papers.styles import SIZES
from ringside.photos.access import reader_of
from ringside.results import queries
from ringside.results.access import access_critique, or_sign_in
from ringside.results.models import Critique
from ringside.shows.access import access_class


def size_of(request: HttpRequest) -> str:
    wanted = request.POST.get("size") or request.GET.get("size", "A4")
    return wanted if wanted in SIZES else "A4"


def language_of(request: HttpRequest) -> str:
    """The language that the papers are asked for in; that of the page where none is."""
    wanted = request.POST.get("language") or request.GET.get("language", "")
    return wanted if wanted in dict(settings.LANGUAGES) else get_language() or "en"


def check_url(request: HttpRequest, critique: Critique) -> str:
    """Where a paper can be checked: an address that works from outside, as it is printed."""
    return check_address(critique, request.build_absolute_uri("/"))


@require_GET
@or_sign_in
def critique(request: HttpRequest, critique_id: int) -> HttpResponse:
    """For whoever may read the critique; whoever is not signed in is asked to, unless the show makes it public."""
    found = access_critique(request.user, critique_id)
    with_photo = reader_of(request.user, found.entry.dog) is not None
    paper = paper_for(found, check_url(request, found), with_photo=with_photo)
    content = critique_pdf(paper, size_of(request))
    return as_file(content, f"{found.entry.number}-{found.entry.dog.name}-{found.language}")


@require_GET
@login_required
def results(request: HttpRequest, slug: str, class_id: int) -> HttpResponse:
    show_class = access_class(request.user, slug, class_id)
    show, told = show_class.show_breed.show, show_class.appointed
    found = queries.compiled(show_class)
    language = get_language() or "en"
    words = labels()[language]
    paper = ResultsPaper(
        show=show.name,
        day=date_format(told.day) if told.day else "",
        title=found.title,
        judge=words["judge"].format(name=told.judge.name if told.judge else ""),
        columns=(words["place"], words["number"], words["dog"], words["grade"]),
        lines=[_line(row) for row in found.rows],
        pages=words["pages"],
        language=language,
    )
    return as_file(results_pdf(paper, size_of(request)), f"results-{found.title}")


def _line(row: queries.Row) -> ResultLine:
    grade = row.grade_name if row.presence == "present" else row.presence_words
    return ResultLine(str(row.place or ""), str(row.entry.number or ""), row.entry.dog.name, grade, row.reason)


def as_file(content: bytes, name: str) -> HttpResponse:
    """The PDF as a download under a name that any file system takes."""
    answer = HttpResponse(content, content_type="application/pdf")
    return exports.as_file(answer, f"{exports.plain_name(name, 80)}.pdf")
