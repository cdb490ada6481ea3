"""The office's front: the shows somebody works for, and one show's set-up."""

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.core.exceptions import ValidationError
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_POST

from ringside.core.denied import Denied
from ringside.core.sentences import sentence
from ringside.people.models import Account
from ringside.shows import actions, queries
from ringside.shows.access import access_show
from ringside.shows.conflicts import findings_on_judges
from ringside.shows.forms import BreedForm, RoleForm, ShowForm
from ringside.shows.models import Show

LINES_PER_PAGE = 100


@login_required
def office(request: HttpRequest) -> HttpResponse:
    shows = queries.shows_of(request.user)
    return render(request, "shows/office.html", {"shows": shows})


@login_required
def new_show(request: HttpRequest) -> HttpResponse:
    who = request.user
    if not isinstance(who, Account) or not who.runs_site:
        raise Denied("You may not start shows on this site. Whoever runs it can let you.")
    form = ShowForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        show = actions.start_show(who=who, **form.cleaned_data)
        messages.success(request, _("The show is made. Next: give each breed its judge, ring and day."))
        return redirect("shows:show", slug=show.slug)
    return render(request, "shows/new.html", {"form": form})


@login_required
def show(request: HttpRequest, slug: str) -> HttpResponse:
    found = access_show(request.user, slug)
    return _show_page(request, found)


@login_required
def details(request: HttpRequest, slug: str) -> HttpResponse:
    found = access_show(request.user, slug, "change-show")
    form = ShowForm(request.POST or None, instance=found)
    if request.method == "POST" and form.is_valid():
        actions.change_show(who=request.user, show=found, **form.cleaned_data)
        messages.success(request, _("The show is changed."))
        return redirect("shows:show", slug=found.slug)
    found.refresh_from_db()
    return render(request, "shows/details.html", {"show": found, "form": form, "stage": "set-up"})


@login_required
@require_POST
def appoint(request: HttpRequest, slug: str) -> HttpResponse:
    found = access_show(request.user, slug, "change-show")
    form = BreedForm(request.POST, show=found)
    if not form.is_valid():
        return _show_page(request, found, breed_form=form)
    appointed = actions.appoint(who=request.user, show=found, **form.cleaned_data)
    told = _("{judge} judges this breed in {ring}.").format(judge=appointed.judge, ring=appointed.ring)
    messages.success(request, told)
    return redirect("shows:show", slug=slug)


@login_required
@require_POST
def give_role(request: HttpRequest, slug: str) -> HttpResponse:
    found = access_show(request.user, slug, "change-show")
    form = RoleForm(request.POST)
    if not form.is_valid():
        return _show_page(request, found, role_form=form)
    try:
        actions.give_role(who=request.user, show=found, **form.cleaned_data)
    except ValidationError as error:
        messages.error(request, " ".join(error.messages))
    return redirect("shows:show", slug=slug)


@login_required
@require_POST
def take_role(request: HttpRequest, slug: str, role_id: int) -> HttpResponse:
    found = access_show(request.user, slug, "change-show")
    actions.take_role(who=request.user, show=found, role_id=role_id)
    return redirect("shows:show", slug=slug)


@login_required
@require_GET
def who_may(request: HttpRequest, slug: str) -> HttpResponse:
    found = access_show(request.user, slug)
    roles, doings = queries.rights_table()
    return render(request, "shows/who_may.html", {"show": found, "stage": "who-may", "roles": roles, "doings": doings})


@login_required
@require_GET
def audit(request: HttpRequest, slug: str) -> HttpResponse:
    found = access_show(request.user, slug, "read-audit")
    page = Paginator(queries.audit_of(found), LINES_PER_PAGE).get_page(request.GET.get("page"))
    return render(request, "shows/audit.html", {"show": found, "stage": "audit", "page": page})


def _show_page(
    request: HttpRequest, found: Show, breed_form: BreedForm | None = None, role_form: RoleForm | None = None
) -> HttpResponse:
    context = {
        "show": found,
        "stage": "set-up",
        "appointments": queries.breed_lines(found),
        "roles": queries.roles_in(found),
        "judges": queries.judges_in(found),
        "judge_findings": [sentence(finding) for finding in findings_on_judges(found)],
        "breed_form": breed_form or BreedForm(show=found, initial={"day": found.first_day}),
        "role_form": role_form or RoleForm(),
    }
    return render(request, "shows/show.html", context, status=400 if breed_form or role_form else 200)
