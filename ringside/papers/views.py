"""PDFs on request, each behind the access of what it prints."""

import re

from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_GET

from ringside.papers.build import labels, paper_for
from ringside.papers.critique import critique_pdf
from ringside.papers.results import ResultLine, ResultsPaper, results_pdf
from ringside.papers.styles import SIZES
from ringside.results import queries
from ringside.results.access import access_critique
from ringside.shows.access import access_class


def size_of(request: HttpRequest) -> str:
    wanted = request.GET.get("size", "A4")
    return wanted if wanted in SIZES else "A4"


@require_GET
@login_required
def critique(request: HttpRequest, critique_id: int) -> HttpResponse:
    found = access_critique(request.user, critique_id)
    content = critique_pdf(paper_for(found), size_of(request))
    return as_file(content, f"{found.entry.number}-{found.entry.dog.name}-{found.language}")


@require_GET
@login_required
def results(request: HttpRequest, slug: str, class_id: int) -> HttpResponse:
    show_class = access_class(request.user, slug, class_id)
    breed = show_class.show_breed
    found = queries.compiled(show_class)
    words = labels()["en"]
    paper = ResultsPaper(
        show=breed.show.name,
        day=f"{breed.day:%d %B %Y}" if breed.day else "",
        title=found.title,
        judge=f"{words['judge']}: {breed.judge.name if breed.judge else ''}",
        columns=(words["place"], words["number"], words["dog"], words["grade"]),
        lines=[_line(row) for row in found.rows],
        pages=words["pages"],
    )
    return as_file(results_pdf(paper, size_of(request)), f"results-{found.title}")


def _line(row: queries.Row) -> ResultLine:
    grade = row.grade_name if row.presence == "present" else row.presence
    return ResultLine(str(row.place or ""), str(row.entry.number or ""), row.entry.dog.name, grade, row.reason)


def as_file(content: bytes, name: str) -> HttpResponse:
    """The PDF as a download under a name that any file system takes."""
    plain = re.sub(r"[^\w-]+", "-", name).strip("-")[:80]
    response = HttpResponse(content, content_type="application/pdf")
    response.headers["Content-Disposition"] = _disposition(plain)
    response.headers["Cache-Control"] = "private, no-store"
    return response


def _disposition(name: str) -> str:
    from django.utils.http import content_disposition_header

    return content_disposition_header(True, f"{name}.pdf") or "attachment"
