"""What is kept of me: shown, taken away as a file, deleted."""

from django.contrib import messages
from django.contrib.auth import logout
from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse, JsonResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils.translation import gettext as _
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_GET, require_POST

from ringside.home.consenting import access_own_consent, withdraw
from ringside.home.forgetting import forget_contact
from ringside.home.kept import kept_of
from ringside.people.models import Account


@login_required
@require_GET
@never_cache
def kept(request: HttpRequest) -> HttpResponse:
    return render(request, "home/kept.html", {"kept": kept_of(request.user)})


@login_required
@require_GET
@never_cache
def kept_file(request: HttpRequest) -> HttpResponse:
    answer = JsonResponse(kept_of(request.user), json_dumps_params={"ensure_ascii": False, "indent": 2})
    answer.headers["Content-Disposition"] = 'attachment; filename="what-is-kept-of-me.json"'
    return answer


@login_required
@require_POST
def withdraw_consent(request: HttpRequest, consent_id: int) -> HttpResponse:
    assert isinstance(request.user, Account)
    consent = access_own_consent(request.user, consent_id)
    withdraw(who=request.user, consent=consent)
    messages.success(request, _("Withdrawn: {what}.").format(what=consent.get_what_display()))
    return redirect(f"{reverse('home:kept')}#consents")


@login_required
@require_POST
def forget(request: HttpRequest) -> HttpResponse:
    forget_contact(who=request.user, typed=request.POST.get("email", ""))
    logout(request)
    messages.success(request, _("Your address and your account are deleted. Published results keep the owner's name."))
    return redirect("home:front")
