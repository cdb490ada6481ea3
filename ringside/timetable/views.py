"""The day's plan: seen by the office, proposed, mended and kept."""

from dataclasses import replace
from itertools import groupby

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from ringside.shows.access import access_show, roles_of
from ringside.shows.may import may
from ringside.shows.models import Show
from ringside.timetable.actions import plan_times
from ringside.timetable.forms import ProposalForm, TimesForm
from ringside.timetable.planning import Planned, plan_of
from ringside.timetable.queries import slots_of
from scoring.bad_input import BadInput

NOTHING_PLANNED = Planned((), (), {})


@login_required
def times(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug, "see-office" if request.method == "GET" else "change-show")
    slots = slots_of(show)
    asked = ProposalForm(request.GET if "begins" in request.GET else None)
    first = _proposed(show, asked)
    form = TimesForm(request.POST or None, slots=slots, proposed=first.times)
    if request.method == "POST" and form.is_valid():
        count = plan_times(who=request.user, show=show, times=form.times())
        words = ngettext("{count} time is changed.", "{count} times are changed.", count)
        messages.success(request, words.format(count=count))
        return redirect("timetable:times", slug=slug)
    context = {
        "show": show,
        "stage": "set-up",
        "rings": [
            (of[0][0], of) for of in (list(of) for _where, of in groupby(form.lines(), lambda line: line[0].where))
        ],
        "form": form,
        "asked": asked,
        "first": first,
        "without": sum(slot.at is None for slot in slots),
        "may_plan": may(roles_of(request.user, show), "change-show"),
    }
    return render(request, "timetable/times.html", context, status=400 if form.errors else 200)


def _proposed(show: Show, asked: ProposalForm) -> Planned:
    """The plain plan, so that the page answers at once; the command can be given time to search for a better one."""
    if not asked.is_valid():
        return NOTHING_PLANNED
    try:
        return plan_of(show, asked.hours(), seconds=0)
    except BadInput:
        return replace(NOTHING_PLANNED, findings=[_("No plan can be made of these hours: plan ring by ring below.")])
