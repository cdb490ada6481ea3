"""Typing a class, or a breed's awards, in from the judge's signed page, and handing that page out."""

from collections.abc import Callable
from typing import Any

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.db.models import QuerySet
from django.http import FileResponse, Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET

from ringside.core.denied import Denied
from ringside.core.handing_out import as_download
from ringside.core.intake import suffix_of, too_many_bytes
from ringside.core.receiving import ByteLimit, takes_file
from ringside.core.sentences import sentence
from ringside.results import paper_actions, paper_awards, queries
from ringside.results.awards import awards_of
from ringside.results.day_forms import PaperForm
from ringside.results.final_forms import PaperAwardsForm
from ringside.results.models import PaperAwards, PaperClass, SignedPage
from ringside.results.paper_page import PAGE
from ringside.shows.access import access_breed, access_class
from ringside.shows.books import rules_of
from ringside.shows.models import ShowBreed, ShowClass


@takes_file(PAGE.most_bytes)
@login_required
def paper(request: HttpRequest, slug: str, class_id: int, limit: ByteLimit) -> HttpResponse:
    show_class = access_class(request.user, slug, class_id, "type-classes")
    found = queries.compiled(show_class)
    form = _form(request, show_class, found)
    if request.method == "POST" and _kept(
        request, form, limit, lambda page: _act(request.user, show_class, form, page)
    ):
        return redirect("results:class", slug=slug, class_id=class_id)
    context = {
        "show": show_class.show_breed.show, "stage": "desk", "found": found, "form": form,
        "paper": PaperClass.objects.filter(show_class=show_class).select_related("judge", "typed_by").first(),
    }  # fmt: skip
    return render(request, "results/paper.html", context, status=400 if form.errors else 200)


def _form(request: HttpRequest, show_class: ShowClass, found: queries.Compiled) -> PaperForm:
    grades = rules_of(show_class.show_breed.show).grades_for(show_class.code)
    is_published = found.state == "published"
    return PaperForm(request.POST or None, rows=() if is_published else found.rows, grades=grades)


def _kept(
    request: HttpRequest, form: PaperForm | PaperAwardsForm, limit: ByteLimit, act: Callable[[bytes | None], SignedPage]
) -> bool:
    """Whether it is written; if not, the form says why and holds what was typed."""
    if not form.is_valid():
        return False
    file = request.FILES.get("page")
    try:
        if limit.is_over:
            raise Denied(sentence(too_many_bytes(PAGE)))
        kept = act(file.read() if file else None)
    except paper_awards.AgainstTheRules as found:
        for words in found.said:
            form.add_error(None, words)
        form.is_against_the_rules = True
        return False
    except Denied as refused:
        form.add_error(None, refused.reason)
        return False
    if kept.is_attested:
        messages.success(request, _("Typed in from the page that {judge} signed.").format(judge=kept.judge))
    else:
        messages.success(request, _("Typed in. It counts as signed once the judge's page is attached."))
    return True


def _act(who: Any, show_class: ShowClass, form: PaperForm, page: bytes | None) -> PaperClass:
    if form.rows:
        return paper_actions.type_class(
            who=who, show_class=show_class, results=form.results(), page=page, why=form.cleaned_data["why_no_page"]
        )
    if page is None:
        raise Denied("Choose a photo or scan of the judge's page first.")
    return paper_actions.attach_page(who=who, show_class=show_class, page=page)


@login_required
@require_GET
def page(request: HttpRequest, slug: str, class_id: int) -> FileResponse:
    show_class = access_class(request.user, slug, class_id, "type-classes")
    return _handed_out(PaperClass.objects.filter(show_class=show_class), f"page-{slug}-{class_id}")


def _handed_out(pages: "QuerySet[Any]", name: str) -> FileResponse:
    found = pages.exclude(page="").first()
    if found is None:
        raise Http404
    return as_download(found.page, f"{name}.{suffix_of(found.media_type)}", found.media_type)


@takes_file(PAGE.most_bytes)
@login_required
def awards(request: HttpRequest, slug: str, breed_id: int, limit: ByteLimit) -> HttpResponse:
    show_breed = access_breed(request.user, slug, breed_id, "type-classes")
    [found] = awards_of([show_breed])
    form = PaperAwardsForm(request.POST or None, lines=() if found.state == "published" else found.lines)
    if request.method == "POST" and _kept(
        request, form, limit, lambda page: _act_on_awards(request.user, show_breed, form, page)
    ):
        return redirect("results:breed-awards", slug=slug, breed_id=breed_id)
    context = {
        "show": show_breed.show, "stage": "desk", "found": found, "form": form,
        "lines": [(*line, ", ".join(paper_awards.competing_now(found.card, line[0].offered))) for line in form.lines()],
        "judge": show_breed.appointed_for().judge, "paper": paper_awards.paper_of(show_breed),
    }  # fmt: skip
    return render(request, "results/paper_awards.html", context, status=400 if form.errors else 200)


def _act_on_awards(who: Any, show_breed: ShowBreed, form: PaperAwardsForm, page: bytes | None) -> PaperAwards:
    if form.awards:
        why, as_written = form.cleaned_data["why_no_page"], form.cleaned_data["as_written"]
        return paper_awards.type_awards(
            who=who, show_breed=show_breed, decided=form.decided(), page=page, why=why, as_written=as_written
        )
    if page is None:
        raise Denied("Choose a photo or scan of the judge's page first.")
    return paper_awards.attach_awards_page(who=who, show_breed=show_breed, page=page)


@login_required
@require_GET
def awards_page(request: HttpRequest, slug: str, breed_id: int) -> FileResponse:
    show_breed = access_breed(request.user, slug, breed_id, "type-classes")
    return _handed_out(PaperAwards.objects.filter(show_breed=show_breed), f"awards-page-{slug}-{breed_id}")
