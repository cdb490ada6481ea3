"""All critiques of a show: started from the results desk, printed while the page looks on, taken away as a file."""

from django.contrib.auth.decorators import login_required
from django.http import FileResponse, Http404, HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.views.decorators.http import require_GET, require_POST

from ringside.core.handing_out import as_download
from ringside.papers import runs
from ringside.papers.models import PaperRun
from ringside.papers.views import size_of
from ringside.people.models import Account, Language
from ringside.shows.access import access_show


def access_run(request: HttpRequest, slug: str, run_id: int) -> PaperRun:
    show = access_show(request.user, slug)
    return get_object_or_404(PaperRun.objects.select_related("show"), show=show, pk=run_id)


@login_required
@require_POST
def start(request: HttpRequest, slug: str) -> HttpResponse:
    assert isinstance(request.user, Account)
    show = access_show(request.user, slug)
    kind, language = request.POST.get("kind", "book"), request.POST.get("language", "en")
    if kind not in PaperRun.Kind.values or language not in Language.values:
        raise Http404
    site = request.build_absolute_uri("/")
    run = runs.start_run(by=request.user, show=show, kind=kind, language=language, size=size_of(request), site=site)
    return redirect("papers:run", slug=slug, run_id=run.pk)


@login_required
@require_GET
def run(request: HttpRequest, slug: str, run_id: int) -> HttpResponse:
    return _page(request, access_run(request, slug, run_id))


@login_required
@require_POST
def advance(request: HttpRequest, slug: str, run_id: int) -> HttpResponse:
    return _page(request, runs.advance(access_run(request, slug, run_id)))


@login_required
@require_GET
def file(request: HttpRequest, slug: str, run_id: int) -> FileResponse:
    found = access_run(request, slug, run_id)
    if not found.is_ready:
        raise Http404
    name = f"critiques-{found.show.slug}-{found.language}.{found.suffix}"
    return as_download(found.file, name, f"application/{found.suffix}")


def _page(request: HttpRequest, found: PaperRun) -> HttpResponse:
    template = "papers/run.html#progress" if request.headers.get("HX-Request") else "papers/run.html"
    return render(request, template, {"run": found, "show": found.show, "stage": "results"})
