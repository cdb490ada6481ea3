"""The office's entries: the list, an entry by hand, catalogue numbers, and the list as a file."""

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.http import content_disposition_header
from django.views.decorators.http import require_GET, require_POST

from ringside.core.sentences import sentence
from ringside.entries import by_hand, lists
from ringside.entries.forms import FileForm, LineForm
from ringside.entries.models import Entry
from ringside.entries.numbering import number_entries
from ringside.shows.access import access_show, roles_of
from ringside.shows.may import may

KINDS = {"csv": "text/csv", "xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"}


@login_required
@require_GET
def entry_list(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug)
    asked = lists.Asked.of(request.GET)
    context = {
        "show": show,
        "stage": "entries",
        "asked": asked,
        "page": lists.page_of(show, asked),
        "breeds": lists.breeds_in(show),
        "names": lists.class_names(show),
        "files": show.entry_files.defer("content").order_by("-uploaded_at", "-id"),
        "file_form": FileForm(),
        "without_number": Entry.objects.filter(show=show, number=None, state=Entry.State.ENTERED).count(),
        "may_number": may(roles_of(request.user, show), "number-entries"),
        "query": _query_without_page(request),
    }
    is_part = request.headers.get("HX-Request") and not request.headers.get("HX-History-Restore-Request")
    response = render(request, "entries/list.html#entry-rows" if is_part else "entries/list.html", context)
    response.headers["Vary"] = "HX-Request"
    return response


def _query_without_page(request: HttpRequest) -> str:
    query = request.GET.copy()
    query.pop("page", None)
    return query.urlencode()


@login_required
def new_entry(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug, "take-entries")
    form = LineForm(request.POST or None)
    findings: list[tuple[str, str]] = []
    if request.method == "POST" and form.is_valid():
        line = by_hand.check(show, form.texts(), timezone.localdate())
        findings = [(finding.severity, sentence(finding)) for finding in line.findings]
        if not line.refused and (not findings or request.POST.get("seen")):
            entry = by_hand.enter(who=request.user, show=show, texts=form.texts(), today=timezone.localdate())
            messages.success(request, f"{entry.dog.name} is entered.")
            return redirect("entries:new" if "another" in request.POST else "entries:list", slug=slug)
    context = {"show": show, "stage": "entries", "form": form, "findings": findings}
    return render(request, "entries/new.html", {**context, "may_go_on": findings and not _refused(findings)})


def _refused(findings: list[tuple[str, str]]) -> bool:
    return any(severity == "refuses" for severity, _ in findings)


@login_required
@require_POST
def number(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug, "number-entries")
    given = number_entries(who=request.user, show=show)
    messages.success(request, f"{given} entries have their catalogue number. Numbers stay as they are from now on.")
    return redirect("entries:list", slug=slug)


@login_required
@require_GET
def export(request: HttpRequest, slug: str, kind: str) -> HttpResponse:
    show = access_show(request.user, slug)
    if kind not in KINDS:
        raise Http404
    content = lists.written(show, lists.Asked.of(request.GET), kind)
    response = HttpResponse(content, content_type=KINDS[kind])
    name = content_disposition_header(True, f"entries-{show.slug}.{kind}")
    response.headers["Content-Disposition"] = name or "attachment"
    return response
