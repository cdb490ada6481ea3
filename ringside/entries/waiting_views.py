"""The office's page of entries that wait for a decision."""

from typing import Any

from django import forms
from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _
from django.views.decorators.http import require_GET, require_POST

from ringside.core.denied import NotNow
from ringside.entries import waiting
from ringside.entries.access import access_request
from ringside.entries.models import EntryRequest
from ringside.entries.queries import facts_of
from ringside.people.models import Account
from ringside.shows.access import access_show, roles_of
from ringside.shows.books import class_names
from ringside.shows.may import may
from ringside.shows.models import Show

PER_PAGE = 25


class DecisionForm(forms.Form):
    reason = forms.CharField(
        label=_("Reason"),
        max_length=300,
        help_text=_("Whoever sent the entry reads it."),
        error_messages={"required": _("Write down why it is accepted or refused.")},
    )


@login_required
@require_GET
def wait_list(request: HttpRequest, slug: str) -> HttpResponse:
    return _page(request, access_show(request.user, slug))


def _page(request: HttpRequest, show: Show, wrong: tuple[int, DecisionForm] | None = None) -> HttpResponse:
    rows = EntryRequest.objects.filter(show=show).select_related("dog", "account", "decided_by", "show")
    rows = rows.prefetch_related("dog__titles", "dog__certificates", "dog__owners")
    page = Paginator(rows.filter(state=EntryRequest.State.WAITING).order_by("asked_at", "id"), PER_PAGE)
    decided = rows.exclude(state=EntryRequest.State.WAITING).order_by("-decided_at", "-id")[:PER_PAGE]
    shown = page.get_page(request.GET.get("page"))
    if wrong and wrong[0] not in [one.pk for one in shown]:
        # Somebody else has decided on it: its form is not on the page any more.
        messages.error(request, " ".join(words for errors in wrong[1].errors.values() for words in errors))
    facts, names = facts_of(show, timezone.localdate()), class_names(show)
    context = {
        "show": show,
        "stage": "entries",
        "page": shown,
        "rows": [
            (waiting.looked_at(one, facts), [names.get(code, code) for code in one.classes], _form_of(one, wrong))
            for one in shown
        ],
        "decided": decided,
        "may_decide": may(roles_of(request.user, show), "decide-entries"),
    }
    return render(request, "entries/waiting.html", context, status=409 if wrong else 200)


def _form_of(one: EntryRequest, wrong: tuple[int, DecisionForm] | None) -> DecisionForm:
    return wrong[1] if wrong and wrong[0] == one.pk else DecisionForm(auto_id=f"request-{one.pk}-%s")


@login_required
@require_POST
def decide(request: HttpRequest, slug: str, waiting_id: int) -> HttpResponse:
    found = access_request(request.user, slug, waiting_id, "decide-entries")
    form = DecisionForm(request.POST, auto_id=f"request-{found.pk}-%s")
    try:
        if form.is_valid():
            _decided(request, found, form.cleaned_data["reason"])
            return redirect("entries:waiting", slug=slug)
    except NotNow as refused:
        form.add_error(None, refused.reason)
    return _page(request, found.show, (found.pk, form))


def _decided(request: HttpRequest, found: EntryRequest, reason: str) -> None:
    where = request.build_absolute_uri(reverse("enter:dogs", args=[found.show.slug]))
    told: dict[str, Any] = {"who": request.user, "request": found, "reason": reason, "where": where}
    assert isinstance(request.user, Account)
    if request.POST.get("do") == "accept":
        waiting.accept(**told, today=timezone.localdate())
        messages.success(
            request,
            gettext("{dog} is entered, and gets its number with the next that are given.").format(dog=found.name),
        )
    else:
        waiting.refuse(**told)
        messages.success(request, gettext("The entry of {dog} is refused.").format(dog=found.name))
