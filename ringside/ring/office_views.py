"""The office's view of the rings on the day: pairing tablets, what they still hold, what waits to be decided."""

import io
from datetime import date, timedelta
from typing import Any

import segno
from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.utils import timezone
from django.utils.safestring import SafeString, mark_safe
from django.utils.translation import gettext as _
from django.utils.translation import ngettext
from django.views.decorators.http import require_GET, require_POST

from ringside.ring import held, pairing, tablets
from ringside.ring.access import Worker
from ringside.ring.models import Edit, Pairing, Tablet
from ringside.ring.reasons import reason_said
from ringside.ring.wording import in_words
from ringside.shows.access import access_show, roles_of
from ringside.shows.models import Ring, Show


@login_required
@require_GET
def rings(request: HttpRequest, slug: str) -> HttpResponse:
    return _page(request, access_show(request.user, slug))


def _page(request: HttpRequest, show: Show, **more: Any) -> HttpResponse:
    now = timezone.now()
    pairings = Pairing.objects.filter(ring__show=show, used_at__isnull=False, ends_at__gt=now)
    context = {
        "show": show,
        "stage": "day",
        "rings": show.rings.order_by("name", "id"),
        "kinds": Pairing.Kind.choices,
        "days": [show.first_day + timedelta(days=n) for n in range((show.last_day - show.first_day).days + 1)],
        "pairings": pairings.select_related("ring").order_by("ring__name", "used_at", "id"),
        "tablets": Tablet.objects.filter(ring__show=show).select_related("ring").order_by("ring__name", "id"),
        "held": [(edit, *in_words(vars(edit)), reason_said(edit.reason)) for edit in held.held_in(show)],
        **more,
    }
    return render(request, "ring/office.html", context)


def _ring(request: HttpRequest, slug: str, doing: str) -> Ring:
    show = access_show(request.user, slug, doing)
    chosen = request.POST.get("ring", "")
    return get_object_or_404(Ring.objects.select_related("show"), show=show, pk=chosen if chosen.isdecimal() else 0)


@login_required
@require_POST
def make_code(request: HttpRequest, slug: str) -> HttpResponse:
    ring = _ring(request, slug, "pair-tablets")
    kind = request.POST.get("kind", "")
    if kind not in Pairing.Kind.values:
        raise Http404
    code = pairing.make_code(who=request.user, ring=ring, kind=kind, day=_day(ring.show, request.POST.get("day", "")))
    address = request.build_absolute_uri(reverse("ring:pair-code", args=[pairing.plain(code)]))
    typed_at = request.build_absolute_uri(reverse("ring:pair"))
    role = Pairing.Kind(kind).label
    shown = {"code": code, "role": role, "ring": ring, "qr": qr_svg(address), "address": typed_at}
    response = _page(request, ring.show, shown=shown)
    response.headers["Cache-Control"] = "no-store"
    return response


def _day(show: Show, text: str) -> date:
    try:
        day = date.fromisoformat(text)
    except ValueError:
        return show.first_day
    return day if show.first_day <= day <= show.last_day else show.first_day


def qr_svg(address: str) -> SafeString:
    """The address as a QR code: shapes only, no style and no text of anybody's."""
    target = io.BytesIO()
    segno.make(address, error="m").save(target, kind="svg", xmldecl=False, svgns=True, omitsize=True, border=2)
    return mark_safe(target.getvalue().decode())


@login_required
@require_POST
def end_pairing(request: HttpRequest, slug: str, pairing_id: int) -> HttpResponse:
    show = access_show(request.user, slug, "pair-tablets")
    pairing.end(who=request.user, pairing=get_object_or_404(Pairing, ring__show=show, pk=pairing_id))
    messages.success(request, _("That tablet can no longer write in the ring. What it still holds is kept on it."))
    return redirect("ring-office:rings", slug=slug)


@login_required
@require_POST
def declare_lost(request: HttpRequest, slug: str, tablet_id: int) -> HttpResponse:
    show = access_show(request.user, slug, "pair-tablets")
    tablet = get_object_or_404(Tablet.objects.select_related("ring__show"), ring__show=show, pk=tablet_id)
    tablets.declare_lost(who=request.user, tablet=tablet, reason=request.POST.get("reason", ""))
    messages.success(request, _("The ring goes on without that tablet. What comes from it later is held here."))
    return redirect("ring-office:rings", slug=slug)


@login_required
@require_POST
def take_file(request: HttpRequest, slug: str) -> HttpResponse:
    ring = _ring(request, slug, "take-held-edits")
    file = request.FILES.get("file")
    if file is None:
        messages.error(request, _("Choose the file first that the tablet saved."))
        return redirect("ring-office:rings", slug=slug)
    answers = held.take_file(who=request.user, ring=ring, content=file.read(held.MOST_BYTES + 1))
    wrong = [
        (*in_words(edit), answer.state == "held", reason_said(answer.reason))
        for edit, answer in answers
        if answer.state in ("refused", "held")
    ]
    said = ngettext("{counted} of {all} edit counts now.", "{counted} of {all} edits count now.", len(answers))
    messages.success(request, said.format(counted=len(answers) - len(wrong), all=len(answers)))
    return _page(request, ring.show, wrong=wrong)


@login_required
@require_POST
def decide(request: HttpRequest, slug: str, edit_id: str) -> HttpResponse:
    """A held edit is taken in, or left out."""
    show = access_show(request.user, slug, "take-held-edits")
    edit = get_object_or_404(Edit.objects.select_related("ring__show"), ring__show=show, state="held", pk=edit_id)
    worker = Worker(edit.ring, roles_of(request.user, show), account=request.user)
    if request.POST.get("counts") == "no":
        held.leave_out(worker=worker, edit=edit)
        messages.success(request, _("Left out: it does not count, and stays on record."))
    else:
        held.take_in(worker=worker, edit=edit)
        messages.success(request, _("Taken in: it counts now, and every tablet of the ring hears of it."))
    return redirect("ring-office:rings", slug=slug)
