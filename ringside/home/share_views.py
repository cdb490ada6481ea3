"""An owner shares a critique; whoever is given the link reads it, until it is withdrawn."""

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import get_language
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_POST

from ringside.entries.own import access_own_entry
from ringside.home import sharing
from ringside.home.reading import reading_of
from ringside.people.models import Account, Language
from ringside.results.access import access_critique


@login_required
@require_POST
def share(request: HttpRequest, critique_id: int) -> HttpResponse:
    assert isinstance(request.user, Account)
    critique = access_critique(request.user, critique_id)
    sharing.share_entry(by=request.user, entry=access_own_entry(request.user, critique.entry_id))
    return redirect("home:critique", critique_id=critique_id)


@login_required
@require_POST
def withdraw(request: HttpRequest, share_id: int) -> HttpResponse:
    assert isinstance(request.user, Account)
    found = sharing.access_own_share(request.user, share_id)
    sharing.withdraw_share(by=request.user, share=found)
    messages.success(request, _("The link is withdrawn: it leads nowhere now, for whoever has it."))
    return redirect("home:dog", dog_id=found.entry.dog_id)


@require_GET
def shared(request: HttpRequest, share_token: str) -> HttpResponse:
    found = sharing.shared_critique(share_token, request.GET.get("in") or get_language())
    languages = [{"code": code, "name": name, "is_here": code == found.language} for code, name in Language.choices]
    answer = render(request, "home/shared.html", {**reading_of(found), "languages": languages})
    answer.headers["X-Robots-Tag"] = "noindex, nofollow"
    answer.headers["Cache-Control"] = "private, no-store"
    return answer
