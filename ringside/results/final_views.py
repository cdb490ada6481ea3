"""The finals on the results desk: all of them as they stand and as a tree, one to record, publish or correct."""

from typing import Any

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext as _
from django.utils.translation import ngettext
from django.views.decorators.http import require_GET, require_POST

from ringside.core.denied import NotNow
from ringside.results import final_actions
from ringside.results.award_corrections import award_corrections_of
from ringside.results.final_forms import CorrectFinalForm, JudgeForm, RecordForm
from ringside.results.final_tree import final_trees
from ringside.results.finals import finals_of
from ringside.results.models import Final
from ringside.results.wording import group_name
from ringside.ring.queries import breed_said
from ringside.shows.access import access_breed, access_show, roles_of
from ringside.shows.books import rules_of
from ringside.shows.known import notes_on_awards, notes_on_groups
from ringside.shows.may import may


def _rights(user: Any, show: Any) -> dict[str, bool]:
    kinds = roles_of(user, show)
    doings = ("change-show", "record-finals", "publish-results", "correct-results")
    return {doing.replace("-", "_"): may(kinds, doing) for doing in doings}


@login_required
@require_GET
def finals(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug)
    found = finals_of(show)
    held = [one for one in found.stands if one.row]
    context = {
        "show": show, "stage": "results", "held": held, "trees": final_trees(found),
        "not_held": [one.title for one in found.stands if one.row is None],
        "without_group": [breed_said(found.breeds[pk]) for pk, group in found.groups.items() if group is None],
        "corrections": [one for one in award_corrections_of(show) if one.correction.final_id],
        "notes": notes_on_awards(found.book, {one.offered.award.code for one in found.stands}),
        "rights": _rights(request.user, show),
    }  # fmt: skip
    return render(request, "results/finals.html", context)


@login_required
@require_POST
def hold(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug, "change-show")
    added = final_actions.hold_finals(who=request.user, show=show)
    words = ngettext(
        "{count} final is held. Drop it if it is not.", "{count} finals are held. Drop those that are not.", added
    )
    messages.success(request, words.format(count=added))
    return redirect("results:finals", slug=slug)


def _final(request: HttpRequest, slug: str, final_id: int, doing: str = "see-office") -> Final:
    show = access_show(request.user, slug, doing)
    found = Final.objects.select_related("show", "judge").filter(show=show, pk=final_id).first()
    if found is None:
        raise Http404
    return found


@login_required
@require_POST
def drop(request: HttpRequest, slug: str, final_id: int) -> HttpResponse:
    final_actions.drop_final(who=request.user, final=_final(request, slug, final_id, "change-show"))
    messages.success(request, _("The show does not hold this final."))
    return redirect("results:finals", slug=slug)


@login_required
@require_POST
def judge(request: HttpRequest, slug: str, final_id: int) -> HttpResponse:
    final = _final(request, slug, final_id, "change-show")
    form = JudgeForm(request.POST)
    if not form.is_valid():
        words = _("Write the judge's name, and the e-mail address as name@place, or leave it empty.")
        messages.error(request, words)
        return redirect("results:final", slug=slug, final_id=final_id)
    final_actions.name_judge(who=request.user, final=final, **form.cleaned_data)
    messages.success(request, _("Judge of this final: {judge}.").format(judge=form.cleaned_data["name"]))
    return redirect("results:final", slug=slug, final_id=final_id)


@login_required
def final(request: HttpRequest, slug: str, final_id: int) -> HttpResponse:
    found = _final(request, slug, final_id, "see-office" if request.method == "GET" else "record-finals")
    stand = final_actions.stands_of(found)
    form = RecordForm(request.POST or None, stand=stand)
    if request.method == "POST" and form.is_valid():
        try:
            after = final_actions.record_final(who=request.user, final=found, **form.told())
        except NotNow as refused:
            form.add_error(None, refused.reason)
        else:
            words = _("{final}: recorded and signed.") if after.state == "signed" else _("{final}: recorded.")
            messages.success(request, words.format(final=after.title))
            return redirect("results:final", slug=slug, final_id=final_id)
    context = {
        "show": found.show, "stage": "results", "stand": stand, "form": form,
        "judge_form": JudgeForm(initial={"name": found.judge.name, "email": found.judge.email} if found.judge else {}),
        "corrections": [one for one in award_corrections_of(found.show) if one.correction.final_id == found.pk],
        "notes": notes_on_awards(rules_of(found.show), {found.award}), "rights": _rights(request.user, found.show),
    }  # fmt: skip
    return render(request, "results/final.html", context)


@login_required
@require_POST
def publish(request: HttpRequest, slug: str, final_id: int) -> HttpResponse:
    found = _final(request, slug, final_id, "publish-results")
    final_actions.publish_final(who=request.user, final=found)
    messages.success(request, _("Published. Exhibitors can read it."))
    return redirect("results:final", slug=slug, final_id=final_id)


@login_required
def correct(request: HttpRequest, slug: str, final_id: int) -> HttpResponse:
    found = _final(request, slug, final_id, "correct-results")
    stand = final_actions.stands_of(found)
    form = CorrectFinalForm(request.POST or None, stand=stand)
    if request.method == "POST" and form.is_valid():
        try:
            final_actions.correct_final(
                who=request.user, final=found, places=form.places(), why=form.cleaned_data["why"]
            )
        except NotNow as refused:
            form.add_error(None, refused.reason)
        else:
            messages.success(request, _("The final is corrected."))
            return redirect("results:final", slug=slug, final_id=final_id)
    context = {"show": found.show, "stage": "results", "stand": stand, "form": form}
    return render(request, "results/correct_final.html", context)


@login_required
@require_GET
def groups(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug)
    found = finals_of(show)
    rows = sorted(
        ((breed_said(breed), breed, found.groups[pk]) for pk, breed in found.breeds.items()), key=lambda row: row[0]
    )
    context = {
        "show": show, "stage": "results", "rows": rows,
        "groups": [(one.code, group_name(one)) for one in found.book.groups],
        "notes": notes_on_groups(found.book), "rights": _rights(request.user, show),
    }  # fmt: skip
    return render(request, "results/groups.html", context)


@login_required
@require_POST
def put_in_group(request: HttpRequest, slug: str, breed_id: int) -> HttpResponse:
    show_breed = access_breed(request.user, slug, breed_id, "change-show")
    final_actions.put_in_group(who=request.user, show_breed=show_breed, group=request.POST.get("group", ""))
    messages.success(request, _("{breed}: group changed for this show.").format(breed=breed_said(show_breed)))
    return redirect("results:groups", slug=slug)
