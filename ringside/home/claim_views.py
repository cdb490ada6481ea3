"""The number card's code: typed in, its owner signed in, the dog among their own."""

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import translation
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods, require_POST

from ringside.core.denied import Denied
from ringside.entries.models import Entry
from ringside.home import claiming
from ringside.home.forms import ClaimForm
from ringside.home.number_cards import number_cards as number_cards_of
from ringside.papers.views import as_file, language_of, size_of
from ringside.people.actions import account_for
from ringside.people.models import Account
from ringside.shows.access import access_show

SESSION_KEY = "claim"


@require_http_methods(["GET", "POST"])
def claim(request: HttpRequest) -> HttpResponse:
    form = ClaimForm(request.POST or None)
    if request.method == "GET" or not form.is_valid():
        return render(request, "home/claim.html", {"form": form})
    email = form.cleaned_data["email"].strip().lower()
    number, code = form.cleaned_data["number"], form.cleaned_data["code"]
    try:
        entry = claiming.entry_for(number=number, code=code, address=request.META.get("REMOTE_ADDR", ""))
    except Denied as denied:
        form.add_error(None, denied.reason)
        return render(request, "home/claim.html", {"form": form}, status=denied.status)
    # Without an account no sign-in code is sent; it owns nothing until the code has come back.
    account_for(email=email)
    request.session[SESSION_KEY] = {"entry": entry.pk, "email": email}
    context = {"entry": entry, "email": email, "next": reverse("home:claim-finish")}
    return render(request, "home/claim_code.html", context)


@login_required
@require_http_methods(["GET", "POST"])
def finish(request: HttpRequest) -> HttpResponse:
    """Only the browser that typed the code, signed in with the address it gave."""
    assert isinstance(request.user, Account)
    kept = request.session.get(SESSION_KEY)
    if not kept or kept["email"] != request.user.email:
        messages.info(request, _("Type number and code of the card first, with the address you sign in with."))
        return redirect("home:claim")
    if request.method == "GET":
        entry = Entry.objects.select_related("dog", "show").get(pk=kept["entry"])
        return render(request, "home/claim_finish.html", {"entry": entry})
    entry = claiming.attach(account=request.user, entry_id=kept["entry"])
    del request.session[SESSION_KEY]
    messages.success(request, _("{dog} is among your dogs now.").format(dog=entry.dog.name))
    return redirect("home:mine")


@login_required
@require_POST
def number_cards(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug, "number-entries")
    where = request.build_absolute_uri(reverse("home:claim"))
    wanted, size = request.POST.get("codes", ""), size_of(request)
    with translation.override(language_of(request)):
        content = number_cards_of(show=show, wanted=wanted, where=where, size=size)
    return as_file(content, f"number-cards-{slug}")
