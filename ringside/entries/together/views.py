"""Group entries: the office's list and form, and an exhibitor's own."""

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.utils import timezone
from django.utils.translation import gettext
from django.views.decorators.http import require_http_methods, require_POST

from ringside.core.sentences import sentence
from ringside.entries.forms import show_refusals
from ringside.entries.models import Entry, GroupEntry
from ringside.entries.together import actions, queries
from ringside.entries.together.forms import GroupForm
from ringside.entries.web.access import access_open_show
from ringside.entries.web.opening import Standing, closes_on, standing_of
from ringside.people.models import Account
from ringside.shows.access import access_show
from ringside.shows.models import Show
from scoring.findings import Finding


@login_required
@require_http_methods(["GET", "POST"])
def office(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug, "take-entries")
    form = GroupForm(request.POST or None, competitions=queries.offered(show))
    if request.method == "POST" and form.is_valid():
        members, unknown = queries.named(show, form.cleaned_data["members"])
        if _enter(request, show, form, members, unknown, for_office=True):
            return redirect("entries:groups", slug=slug)
    context = {"show": show, "stage": "entries", "form": form, "groups": queries.groups_of(show)}
    return render(request, "entries/groups.html", context, status=400 if form.errors else 200)


def _enter(
    request: HttpRequest, show: Show, form: GroupForm, members: list[Entry], unknown: list[Finding], for_office: bool
) -> bool:
    """Whether it is entered; otherwise what stands in the way is in the form."""
    assert isinstance(request.user, Account)
    data = form.cleaned_data
    told = {"code": data["code"], "name": data["name"], "members": members, "born": data["born"]}
    found = [*unknown, *actions.findings_on(show, **told)]
    show_refusals(form, found)
    if form.errors:
        return False
    today = timezone.localdate()
    group = actions.enter_group(who=request.user, show=show, **told, today=today, for_office=for_office)
    messages.success(request, gettext("{group} is entered.").format(group=group.name))
    for warned in (one for one in found if one.severity == "warns"):
        messages.warning(request, sentence(warned))
    return True


@login_required
@require_http_methods(["GET", "POST"])
def own(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_open_show(slug)
    assert isinstance(request.user, Account)
    entries = list({entry.dog_id: entry for entry in queries.entered_dogs(show, request.user)}.values())
    form = GroupForm(request.POST or None, competitions=queries.offered(show), own=entries)
    sent = request.method == "POST" and form.is_valid()
    if sent and _enter(request, show, form, form.ticked(), [], for_office=False):
        return redirect("enter:groups", slug=slug)
    standing = standing_of(show, timezone.localdate())
    context = {
        "show": show,
        "standing": standing.value,
        "closes": closes_on(show),
        "is_open": standing is Standing.OPEN,
        "offered": queries.offered(show),
        "form": form,
        "groups": queries.groups_of(show, request.user),
    }
    return render(request, "entries/web/groups.html", context, status=400 if form.errors else 200)


@login_required
@require_POST
def withdraw(request: HttpRequest, slug: str, group_id: int) -> HttpResponse:
    show = access_show(request.user, slug, "take-entries")
    group = get_object_or_404(GroupEntry.objects.select_related("show"), show=show, pk=group_id)
    actions.withdraw_group(who=request.user, group=group, for_office=True, today=timezone.localdate())
    return redirect("entries:groups", slug=slug)


@login_required
@require_POST
def withdraw_own(request: HttpRequest, slug: str, group_id: int) -> HttpResponse:
    show = access_open_show(slug)
    group = get_object_or_404(GroupEntry.objects.select_related("show"), show=show, pk=group_id, account=request.user)
    actions.withdraw_group(who=request.user, group=group, for_office=False, today=timezone.localdate())
    return redirect("enter:groups", slug=slug)
