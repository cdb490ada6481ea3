"""Results, entries and schedule as files, each behind the office's door."""

from django.contrib.auth.decorators import login_required
from django.http import Http404, HttpRequest, HttpResponse, JsonResponse
from django.utils import timezone
from django.views.decorators.http import require_GET

from ringside.core.exports import KINDS, as_file, table_as_file
from ringside.results import out
from ringside.results.out_awards import awards_table
from ringside.results.schedule import schedule_of
from ringside.shows.access import access_show


@login_required
@require_GET
def results(request: HttpRequest, slug: str, kind: str) -> HttpResponse:
    show = access_show(request.user, slug)
    if kind == "json":
        answer = JsonResponse(out.results_json(show), json_dumps_params={"ensure_ascii": False})
        return as_file(answer, f"results-{show.slug}.json")
    if kind not in KINDS:
        raise Http404
    return table_as_file(out.results_table(show, kind), kind, f"results-{show.slug}")


@login_required
@require_GET
def awards(request: HttpRequest, slug: str, kind: str) -> HttpResponse:
    show = access_show(request.user, slug)
    if kind not in KINDS:
        raise Http404
    return table_as_file(awards_table(show, kind), kind, f"awards-{show.slug}")


@login_required
@require_GET
def entries(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug, "take-entries")
    answer = JsonResponse(out.entries_json(show), json_dumps_params={"ensure_ascii": False})
    return as_file(answer, f"entries-{show.slug}.json")


@login_required
@require_GET
def schedule(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug)
    content = schedule_of(show, timezone.now())
    return as_file(HttpResponse(content, content_type="text/calendar; charset=utf-8"), f"schedule-{show.slug}.ics")


@login_required
@require_GET
def schema(request: HttpRequest, slug: str, name: str) -> HttpResponse:
    access_show(request.user, slug)
    if name not in ("results", "entries"):
        raise Http404
    return JsonResponse(out.schema(name))
