"""A file of entries in the office: read, looked through, mended, taken; nothing half-imported."""

from typing import Any

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.translation import gettext, ngettext
from django.views.decorators.http import require_POST

from ringside.core.sentences import colon, sentence
from ringside.entries import actions, queries
from ringside.entries.access import access_file, access_line
from ringside.entries.forms import ColumnsForm, FileForm, LineForm, ReadingForm
from ringside.entries.models import EntryFile, EntryLine
from ringside.entries.reading import NotReadable
from ringside.entries.reading.dates import STYLES
from ringside.entries.reading.encodings import ENCODINGS
from ringside.entries.reading.separated import DELIMITERS
from ringside.shows.access import access_show

PER_PAGE = 100


@login_required
@require_POST
def upload(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug, "take-entries")
    form = FileForm(request.POST, request.FILES)
    if not form.is_valid():
        messages.error(request, " ".join(message for errors in form.errors.values() for message in errors))
        return redirect("entries:list", slug=slug)
    given = form.cleaned_data["file"]
    try:
        file = actions.read_file(
            who=request.user, show=show, name=given.name, content=given.read(), today=timezone.localdate()
        )
    except NotReadable as problem:
        messages.error(request, colon(given.name, sentence(problem.finding)))
        return redirect("entries:list", slug=slug)
    return redirect("entries:file", slug=slug, file_id=file.pk)


@login_required
def one_file(request: HttpRequest, slug: str, file_id: int) -> HttpResponse:
    file = access_file(request.user, slug, file_id)
    actions.keep_current(file=file, today=timezone.localdate())
    return _file_page(request, file)


def _file_page(request: HttpRequest, file: EntryFile, columns_form: ColumnsForm | None = None) -> HttpResponse:
    shown = request.GET.get("show", "all")
    page = Paginator(queries.lines_of(file, shown), PER_PAGE).get_page(request.GET.get("page"))
    counts = queries.counts_of(file)
    context = {
        "show": file.show,
        "stage": "entries",
        "file": file,
        "recognised": recognised(file),
        "shown": shown if shown in queries.FILTERS else "all",
        "filters": [(code, told[0], counts[code]) for code, told in queries.FILTERS.items()],
        "counts": counts,
        "takeable": counts["good"] + counts["warned"],
        "page": page,
        "rows": [_row(file, line) for line in page],
        "pages_query": f"show={shown}" if shown in queries.FILTERS else "",
        "columns_form": columns_form or ColumnsForm(file=file),
        "reading_form": ReadingForm(initial={"encoding": file.encoding, "delimiter": file.delimiter}),
    }
    return render(request, "entries/file.html", context, status=400 if columns_form else 200)


def recognised(file: EntryFile) -> list[tuple[str, str]]:
    """What was found out about the file, in words."""
    kind = gettext("workbook (.xlsx)") if file.kind == "xlsx" else gettext("text with separators (CSV)")
    found = [(gettext("Kind"), kind)]
    if file.encoding:
        found.append((gettext("Encoding"), gettext(ENCODINGS.get(file.encoding, file.encoding))))
    if file.delimiter:
        found.append((gettext("Separator"), gettext(DELIMITERS.get(file.delimiter, file.delimiter))))
    if file.sheet:
        found.append((gettext("Sheet"), file.sheet))
    at = gettext("line {line}").format(line=file.heading_line) if file.heading_line else gettext("none in this file")
    dates = gettext(STYLES[file.date_style][0])
    if not file.date_certain:
        dates = gettext("{dates} (day and month could also be the other way round: please look)").format(dates=dates)
    return [*found, (gettext("Headings"), at), (gettext("Dates"), dates)]


def _made(taken: int) -> str:
    return ngettext("{taken} entry was made.", "{taken} entries were made.", taken).format(taken=taken)


def _row(file: EntryFile, line: EntryLine) -> dict[str, Any]:
    texts = queries.texts_of(line, file.columns)
    said = [{"severity": found["severity"], "words": sentence(found)} for found in line.findings]
    order = {"refuses": 0, "warns": 1, "notes": 2}
    return {"line": line, "texts": texts, "said": sorted(said, key=lambda one: order[one["severity"]])}


@login_required
@require_POST
def columns(request: HttpRequest, slug: str, file_id: int) -> HttpResponse:
    file = access_file(request.user, slug, file_id)
    form = ColumnsForm(request.POST, file=file)
    if not form.is_valid():
        return _file_page(request, file, form)
    style, today = form.cleaned_data["date_style"], timezone.localdate()
    actions.map_columns(who=request.user, file=file, columns=form.columns(), date_style=style, today=today)
    messages.success(request, gettext("The columns are read so now; every line is checked again."))
    return redirect("entries:file", slug=slug, file_id=file_id)


@login_required
@require_POST
def again(request: HttpRequest, slug: str, file_id: int) -> HttpResponse:
    file = access_file(request.user, slug, file_id)
    form = ReadingForm(request.POST)
    if form.is_valid():
        try:
            actions.read_again(who=request.user, file=file, today=timezone.localdate(), **form.cleaned_data)
            messages.success(request, gettext("The file is read again."))
        except NotReadable as problem:
            messages.error(request, gettext("It stays as it was: {why}").format(why=sentence(problem.finding)))
    return redirect("entries:file", slug=slug, file_id=file_id)


@login_required
def one_line(request: HttpRequest, slug: str, file_id: int, line_no: int) -> HttpResponse:
    line = access_line(request.user, slug, file_id, line_no)
    texts = queries.texts_of(line, line.file.columns)
    form = LineForm(request.POST or None, texts=texts)
    if request.method == "POST" and form.is_valid():
        line = actions.mend_line(who=request.user, line=line, texts=form.texts(), today=timezone.localdate())
        if line.standing != EntryLine.Standing.REFUSED:
            messages.success(request, gettext("Line {line} can be taken now.").format(line=line.line))
            return redirect("entries:file", slug=slug, file_id=file_id)
        form = LineForm(texts=queries.texts_of(line, line.file.columns))
    row = _row(line.file, line)
    context = {"show": line.file.show, "stage": "entries", "file": line.file, "line": line, "form": form, "row": row}
    return render(request, "entries/line.html", context)


@login_required
@require_POST
def lines(request: HttpRequest, slug: str, file_id: int) -> HttpResponse:
    """One of three things with all good lines, or with those that are ticked: take, set aside, bring back."""
    file = access_file(request.user, slug, file_id)
    chosen = [int(text) for text in request.POST.getlist("line") if text.isdecimal() and len(text) < 10]
    today, doing = timezone.localdate(), request.POST.get("do", "")
    if doing == "take-good":
        taken = actions.take_lines(who=request.user, file=file, today=today)
        messages.success(request, _made(taken) if taken else gettext("No line was waiting to be taken."))
    elif not chosen:
        messages.error(request, gettext("Tick the lines first."))
    elif doing == "take":
        taken = actions.take_lines(who=request.user, file=file, today=today, numbers=chosen)
        messages.success(request, _made(taken))
    elif doing == "aside":
        moved = actions.set_aside(who=request.user, file=file, numbers=chosen, today=today)
        messages.success(
            request,
            ngettext(
                "{moved} line is set aside. It is kept and can be brought back.",
                "{moved} lines are set aside. They are kept and can be brought back.",
                moved,
            ).format(moved=moved),
        )
    elif doing == "back":
        moved = actions.bring_back(who=request.user, file=file, numbers=chosen, today=today)
        messages.success(
            request, ngettext("{moved} line is back.", "{moved} lines are back.", moved).format(moved=moved)
        )
    return redirect("entries:file", slug=slug, file_id=file_id)


@login_required
@require_POST
def throw_away(request: HttpRequest, slug: str, file_id: int) -> HttpResponse:
    file = access_file(request.user, slug, file_id)
    actions.throw_away(who=request.user, file=file)
    messages.success(request, gettext("{file} is forgotten. Entries that were made of it stay.").format(file=file.name))
    return redirect("entries:list", slug=slug)
