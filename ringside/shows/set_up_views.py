"""Setting up one breed's parts, the classes offered, and a judge replaced."""

from typing import Any

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy
from django.views.decorators.http import require_POST

from ringside.core.denied import NotNow
from ringside.core.sentences import sentence
from ringside.people.models import Person
from ringside.shows import actions, appointing, queries
from ringside.shows.access import access_breed, access_show
from ringside.shows.books import standard_of
from ringside.shows.conflicts import findings_on_judges
from ringside.shows.copying import copy_show
from ringside.shows.forms import ClassesForm, CopyForm, PartForm, ReplaceForm, WholeForm
from ringside.shows.models import Appointment, ShowBreed

# The page of a breed has two forms that name a judge.
WHOLE_IDS = "whole_%s"
CHANGED = gettext_lazy("Changed. Print the papers of the rings concerned again if they were printed.")


@login_required
def breed(request: HttpRequest, slug: str, breed_id: int) -> HttpResponse:
    """Who judges a breed and each part of it; a part is changed here, `?part=` takes its appointment up."""
    found = access_breed(request.user, slug, breed_id, "change-show")
    form = PartForm(request.POST or None, show=found.show, initial=_of_part(found, request.GET.get("part", "")))
    if request.method == "POST" and form.is_valid():
        appointing.appoint_part(who=request.user, show_breed=found, **form.told())
        messages.success(request, CHANGED)
        return redirect("shows:breed", slug=slug, breed_id=breed_id)
    return _breed_page(request, found, part_form=form)


@login_required
@require_POST
def appoint_whole(request: HttpRequest, slug: str, breed_id: int) -> HttpResponse:
    """The breed's own judge, ring and day, or the variety's."""
    found = access_breed(request.user, slug, breed_id, "change-show")
    form = WholeForm(request.POST, show=found.show, auto_id=WHOLE_IDS)
    if not form.is_valid():
        return _breed_page(request, found, whole_form=form)
    unit = {"breed": found.breed, "variety": found.variety}
    actions.appoint(who=request.user, show=found.show, **unit, **form.cleaned_data)
    messages.success(request, CHANGED)
    return redirect("shows:breed", slug=slug, breed_id=breed_id)


@login_required
@require_POST
def take_appointment_away(request: HttpRequest, slug: str, breed_id: int) -> HttpResponse:
    found = access_breed(request.user, slug, breed_id, "change-show")
    title = queries.breed_title(found)
    try:
        is_gone = appointing.take_appointment_away(who=request.user, show_breed=found)
    except NotNow as refused:
        messages.error(request, refused.reason)
        return redirect("shows:breed", slug=slug, breed_id=breed_id)
    if not is_gone:
        messages.success(request, _("The appointment is taken away. The dogs entered stay."))
        return redirect("shows:breed", slug=slug, breed_id=breed_id)
    messages.success(request, _("{breed} is taken out of the show: no dog was entered.").format(breed=title))
    return redirect("shows:show", slug=slug)


def _breed_page(
    request: HttpRequest, found: ShowBreed, part_form: PartForm | None = None, whole_form: WholeForm | None = None
) -> HttpResponse:
    told = {**_initial(found), "day": found.day or found.show.first_day}
    context = {
        "show": found.show,
        "stage": "set-up",
        "breed": found,
        "title": queries.breed_title(found),
        "parts": queries.part_lines(found),
        "form": part_form or PartForm(show=found.show),
        "whole_form": whole_form or WholeForm(show=found.show, initial=told, auto_id=WHOLE_IDS),
        "has_varieties": bool(standard_of(found).varieties),
        "has_dogs": found.classes.filter(entries__isnull=False).exists(),
        "judge_findings": [sentence(finding) for finding in findings_on_judges(found.show)],
    }
    return render(request, "shows/breed.html", context, status=400 if whole_form or context["form"].errors else 200)


def _of_part(breed: ShowBreed, key: str) -> dict[str, Any]:
    """What the part is appointed to now, to begin with."""
    own = next((line.own for line in queries.part_lines(breed) if line.key == key), None)
    return {"part": key, **(_initial(own) if own else {})}


def _initial(one: ShowBreed | Appointment) -> dict[str, Any]:
    return {
        "judge_name": one.judge.name if one.judge else "",
        "judge_email": one.judge.email if one.judge else "",
        "ring": one.ring.name if one.ring else "",
        "day": one.day,
    }


@login_required
def classes(request: HttpRequest, slug: str) -> HttpResponse:
    found = access_show(request.user, slug, "change-show")
    form = ClassesForm(request.POST or None, show=found)
    if request.method == "POST" and form.is_valid():
        actions.change_show(who=request.user, show=found, classes_offered=form.cleaned_data["classes"])
        messages.success(request, _("The show offers these classes."))
        return redirect("shows:show", slug=slug)
    return render(request, "shows/classes.html", {"show": found, "stage": "set-up", "form": form})


@login_required
def replace_judge(request: HttpRequest, slug: str, person_id: int) -> HttpResponse:
    """Before: what the judge has and what stays. After: findings again, and the papers to print again."""
    found = access_show(request.user, slug, "change-show")
    judge = get_object_or_404(Person, pk=person_id, pk__in=queries.judges_of(found))
    rings = queries.rings_of_person(found, judge)
    form = ReplaceForm(request.POST or None, show=found)
    context = {"show": found, "stage": "set-up", "judge": judge, "rings": rings, "form": form}
    if request.method == "POST" and form.is_valid():
        new = appointing.replace_judge(who=request.user, show=found, judge=judge, **form.cleaned_data)
        context |= {"new": new, "judge_findings": [sentence(finding) for finding in findings_on_judges(found)]}
    kept = queries.signed_by(found, judge)
    return render(request, "shows/replace_judge.html", {**context, "kept": kept})


@login_required
def copy(request: HttpRequest, slug: str) -> HttpResponse:
    """An earlier show as the start of a new one."""
    source = access_show(request.user, slug, "change-show")
    form = CopyForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        show = copy_show(who=request.user, source=source, **form.cleaned_data)
        messages.success(request, _("The show is made, without entries. Next: look at its days and its judges."))
        return redirect("shows:show", slug=show.slug)
    return render(request, "shows/copy.html", {"show": source, "stage": "set-up", "form": form})
