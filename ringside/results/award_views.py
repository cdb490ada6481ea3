"""The awards on the results desk: every breed as it stands, one breed as a tree, publishing."""

from collections.abc import Callable
from typing import Any

from django import forms
from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_POST

from ringside.core.denied import NotNow
from ringside.entries.models import Entry
from ringside.results import award_actions
from ringside.results.award_corrections import award_corrections_of, cancel_awards, correct_award
from ringside.results.award_tree import trees_of
from ringside.results.awards import BreedAwards, awards_of, breeds_of
from ringside.results.final_forms import AwardCorrectionForm, CancelForm
from ringside.results.paper_awards import paper_of
from ringside.ring.queries import breed_said
from ringside.shows.access import access_breed, access_show, roles_of
from ringside.shows.known import notes_on_awards
from ringside.shows.may import may
from ringside.shows.models import ShowBreed

PER_PAGE = 50


@login_required
@require_GET
def breeds(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug)
    page = Paginator(breeds_of(show), PER_PAGE).get_page(request.GET.get("page"))
    template = "results/awards.html#rows" if request.headers.get("HX-Request") else "results/awards.html"
    context = {"show": show, "stage": "results", "page": page, "breeds": awards_of(page.object_list)}
    return render(request, template, context)


@login_required
@require_GET
def breed(request: HttpRequest, slug: str, breed_id: int) -> HttpResponse:
    show_breed = access_breed(request.user, slug, breed_id)
    [found] = awards_of([show_breed])
    template = "results/breed_awards.html#card" if request.headers.get("HX-Request") else "results/breed_awards.html"
    offered = {line.offered.award.code for line in found.lines}
    context = {
        "show": show_breed.show, "stage": "results", "found": found, "trees": trees_of(found.card),
        "corrections": award_corrections_of(show_breed.show, show_breed),
        "notes": notes_on_awards(found.card.book, offered), "paper": paper_of(show_breed),
        "may_type": may(roles_of(request.user, show_breed.show), "type-classes"),
        "may_correct": may(roles_of(request.user, show_breed.show), "correct-results"),
    }  # fmt: skip
    return render(request, template, context)


@login_required
@require_POST
def publish(request: HttpRequest, slug: str, breed_id: int) -> HttpResponse:
    show_breed = access_breed(request.user, slug, breed_id, "publish-results")
    award_actions.publish_awards(by=request.user, show_breed=show_breed)
    messages.success(request, _("Published: the awards of the breed {breed}.").format(breed=breed_said(show_breed)))
    return redirect("results:breed-awards", slug=slug, breed_id=breed_id)


@login_required
def correct(request: HttpRequest, slug: str, breed_id: int) -> HttpResponse:
    show_breed = access_breed(request.user, slug, breed_id, "correct-results")
    [found] = awards_of([show_breed])
    form = AwardCorrectionForm(request.POST or None, awards=[(line.offered.code, line.words) for line in found.lines])
    return _corrected(request, found, form, "correct", lambda data: correct_award(
        who=request.user, show_breed=show_breed, **data
    ))  # fmt: skip


@login_required
def cancel(request: HttpRequest, slug: str, breed_id: int) -> HttpResponse:
    show_breed = access_breed(request.user, slug, breed_id, "correct-results")
    [found] = awards_of([show_breed])
    form = CancelForm(request.POST or None)
    return _corrected(request, found, form, "cancel", lambda data: cancel_awards(
        who=request.user, entry=_entry_of(show_breed, data["number"]), why=data["why"]
    ))  # fmt: skip


def _entry_of(show_breed: ShowBreed, number: int) -> Entry:
    """Any entry of the dog of this number: what is cancelled is cancelled for all of them."""
    entry = Entry.objects.select_related("show").filter(show_class__show_breed=show_breed, number=number).first()
    if entry is None:
        raise NotNow("No dog of this breed has the number {number}.", number=number)
    return entry


def _corrected(
    request: HttpRequest, found: BreedAwards, form: forms.Form, kind: str, change: Callable[[dict[str, Any]], object]
) -> HttpResponse:
    """The form with what is wrong in it, or back to the breed once the change is made."""
    breed = found.card.breed
    if request.method == "POST" and form.is_valid():
        try:
            change(form.cleaned_data)
        except NotNow as refused:
            form.add_error(None, refused.reason)
        else:
            messages.success(request, _("Corrected. What it was, who changed it and why stay on the page."))
            return redirect("results:breed-awards", slug=breed.show.slug, breed_id=breed.pk)
    context = {"show": breed.show, "stage": "results", "found": found, "form": form, "kind": kind}
    return render(request, "results/correct_award.html", context)
