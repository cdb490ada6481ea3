"""A fact that is wrong: the owner asks, the office answers."""

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from ringside.entries.own import access_own_entry
from ringside.home import asking
from ringside.home.forms import AskForm
from ringside.home.models import CorrectionRequest
from ringside.people.models import Account
from ringside.shows.access import access_show, roles_of
from ringside.shows.may import may


@login_required
@require_http_methods(["GET", "POST"])
def ask(request: HttpRequest, entry_id: int) -> HttpResponse:
    assert isinstance(request.user, Account)
    entry = access_own_entry(request.user, entry_id)
    form = AskForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        asking.ask_correction(by=request.user, entry=entry, **form.cleaned_data)
        messages.success(request, _("The show's office has your request. Its answer will stand on this dog's page."))
        return redirect("home:dog", dog_id=entry.dog_id)
    return render(request, "home/ask.html", {"form": form, "entry": entry})


@login_required
@require_GET
def requests(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug)
    context = {
        "show": show,
        "stage": "results",
        "requests": asking.requests_of(show),
        "may_answer": may(roles_of(request.user, show), "correct-results"),
    }
    return render(request, "home/requests.html", context)


@login_required
@require_POST
def answer(request: HttpRequest, slug: str, request_id: int) -> HttpResponse:
    assert isinstance(request.user, Account)
    show = access_show(request.user, slug, "correct-results")
    asked = CorrectionRequest.objects.select_related("entry__show").filter(entry__show=show)
    found = get_object_or_404(asked, pk=request_id)
    asking.answer_request(by=request.user, request=found, answer=request.POST.get("answer", "")[:1000])
    messages.success(request, _("Answered. The owner reads it beside the dog's result."))
    return redirect("home:requests", slug=slug)
