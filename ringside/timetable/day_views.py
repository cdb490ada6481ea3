"""Days and rings: which ring judges what on which day, and the rings themselves."""

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.utils.translation import gettext as _
from django.views.decorators.http import require_POST

from ringside.core.denied import NotNow
from ringside.shows import rings
from ringside.shows.access import access_show, roles_of
from ringside.shows.forms import RingForm
from ringside.shows.may import may
from ringside.shows.models import Ring, Show
from ringside.timetable.days import days_of_show


@login_required
def days(request: HttpRequest, slug: str) -> HttpResponse:
    """The days with their rings; a new ring is added here."""
    show = access_show(request.user, slug, "see-office" if request.method == "GET" else "change-show")
    form = RingForm(request.POST or None, show=show)
    if request.method == "POST" and form.is_valid():
        ring = rings.add_ring(who=request.user, show=show, **form.cleaned_data)
        messages.success(request, _("Ring {name} is added.").format(name=ring.name))
        return redirect("timetable:days", slug=slug)
    return _page(request, show, form)


@login_required
@require_POST
def change_ring(request: HttpRequest, slug: str, ring_id: int) -> HttpResponse:
    show = access_show(request.user, slug, "change-show")
    ring = get_object_or_404(Ring, show=show, pk=ring_id)
    form = RingForm(request.POST, show=show, ring=ring, prefix=f"ring-{ring.pk}")
    if not form.is_valid():
        return _page(request, show, RingForm(show=show), form)
    rings.change_ring(who=request.user, ring=ring, **form.cleaned_data)
    messages.success(request, _("Changed. Print the papers of the rings concerned again if they were printed."))
    return redirect("timetable:days", slug=slug)


@login_required
@require_POST
def remove_ring(request: HttpRequest, slug: str, ring_id: int) -> HttpResponse:
    show = access_show(request.user, slug, "change-show")
    ring = get_object_or_404(Ring, show=show, pk=ring_id)
    try:
        rings.remove_ring(who=request.user, ring=ring)
        messages.success(request, _("Ring {name} is removed.").format(name=ring.name))
    except NotNow as refused:
        messages.error(request, refused.reason)
    return redirect("timetable:days", slug=slug)


def _page(request: HttpRequest, show: Show, form: RingForm, wrong: RingForm | None = None) -> HttpResponse:
    """`wrong` is the form of one ring as it was sent and refused: what was typed stays."""
    of_rings = [
        wrong if wrong and wrong.ring == ring else RingForm(show=show, ring=ring, prefix=f"ring-{ring.pk}")
        for ring in show.rings.order_by("name", "id")
    ]
    context = {
        "show": show,
        "stage": "set-up",
        "plan": days_of_show(show),
        "form": form,
        "of_rings": of_rings,
        "may_plan": may(roles_of(request.user, show), "change-show"),
    }
    return render(request, "timetable/days.html", context, status=400 if form.errors or wrong else 200)
