"""The page on which a show sets what it charges: terms, fee table, and what is still open in it."""

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.http import require_POST

from ringside.core.denied import NotNow
from ringside.core.sentences import sentence
from ringside.fees import setting
from ringside.fees.accounts import terms_of
from ringside.fees.charging import findings_on_table
from ringside.fees.forms import LineForm, TermsForm
from ringside.fees.models import FeeLine
from ringside.fees.shown import table_shown
from ringside.shows.access import access_show
from ringside.shows.models import Show


@login_required
def set_up(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug, "set-fees")
    form = TermsForm(request.POST or None, instance=terms_of(show))
    if request.method == "POST" and form.is_valid():
        try:
            setting.set_terms(who=request.user, show=show, **form.cleaned_data)
        except NotNow as refused:
            form.add_error(None, refused.reason)
        else:
            messages.success(request, _("Kept. Invoices say so from now on; those already sent stay as they are."))
            return redirect("fees:set-up", slug=slug)
    context = {
        "show": show, "stage": "fees", "form": form, "lines": table_shown(show),
        "findings": [sentence(one) for one in findings_on_table(show, timezone.localdate())],
    }  # fmt: skip
    return render(request, "fees/set_up.html", context)


@login_required
def new_line(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug, "set-fees")
    form = LineForm(request.POST or None, show=show, currency=terms_of(show).currency)
    if request.method == "POST" and form.is_valid():
        added = setting.add_line(who=request.user, show=show, **form.cleaned_data)
        messages.success(request, _("“{fee}” is in the fee table.").format(fee=added.name))
        return redirect("fees:set-up", slug=slug)
    return render(request, "fees/line.html", {"show": show, "stage": "fees", "form": form})


def _line(show: Show, line_id: int) -> FeeLine:
    found = FeeLine.objects.select_related("show").filter(show=show, pk=line_id).first()
    if found is None:
        raise Http404
    return found


@login_required
def line(request: HttpRequest, slug: str, line_id: int) -> HttpResponse:
    show = access_show(request.user, slug, "set-fees")
    found = _line(show, line_id)
    form = LineForm(request.POST or None, instance=found, show=show, currency=terms_of(show).currency)
    if request.method == "POST" and form.is_valid():
        setting.change_line(who=request.user, line=found, **form.cleaned_data)
        told = _("“{fee}” is changed. Accounts follow it; invoices already sent do not.")
        messages.success(request, told.format(fee=found.name))
        return redirect("fees:set-up", slug=slug)
    return render(request, "fees/line.html", {"show": show, "stage": "fees", "form": form, "line": found})


@login_required
@require_POST
def remove_line(request: HttpRequest, slug: str, line_id: int) -> HttpResponse:
    show = access_show(request.user, slug, "set-fees")
    found = _line(show, line_id)
    setting.remove_line(who=request.user, line=found)
    messages.success(request, _("“{fee}” is out of the fee table.").format(fee=found.name))
    return redirect("fees:set-up", slug=slug)
