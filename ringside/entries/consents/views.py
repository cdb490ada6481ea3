"""An address in the catalogue: the person agrees on a page of the show, the office records a paper form."""

from collections.abc import Iterator
from typing import Any

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.utils.translation import gettext
from django.views.decorators.http import require_http_methods, require_POST

from ringside.core.denied import NotNow
from ringside.entries.access import access_entry
from ringside.entries.consents import actions, queries
from ringside.entries.consents.forms import AddressForm, OwnAddressForm, PaperAddressForm
from ringside.entries.consents.wording import latest, words_of
from ringside.entries.entry_views import entry_page
from ringside.entries.models import Consent
from ringside.entries.web.access import access_open_show
from ringside.people.models import Account, Person
from ringside.shows.models import Show


@login_required
@require_http_methods(["GET", "POST"])
def own_address(request: HttpRequest, slug: str) -> HttpResponse:
    """Each name under which the person shows there, with what it agreed to."""
    show = access_open_show(slug)
    assert isinstance(request.user, Account)
    if request.POST.get("critiques") in ("yes", "no") and show.critiques_public:
        actions.settle_critiques(who=request.user, show=show, allowed=request.POST["critiques"] == "yes")
        messages.success(request, gettext("Written down. It holds from now on."))
        return redirect("enter:catalogue-address", slug=slug)
    names = list(_names(request, show, request.user))
    sent = next((form for _, _, form in names if form.is_bound), None)
    if request.method == "POST" and sent is None:
        raise Http404
    if sent is not None and _agreed(request, show, sent, for_office=False):
        return redirect("enter:catalogue-address", slug=slug)
    words = words_of(queries.ADDRESS, latest(queries.ADDRESS))
    context = {
        "show": show, "names": names, "words": words, "said": queries.said_of_critiques(show, request.user),
    }  # fmt: skip
    return render(request, "entries/web/address.html", context, status=400 if sent else 200)


def _names(request: HttpRequest, show: Show, account: Account) -> Iterator[tuple[Person, Consent | None, AddressForm]]:
    for person, standing, last in queries.addresses_for(show, account):
        is_sent = request.POST.get("person") == str(person.pk)
        initial = {"person": person.pk, "address": last}
        people = Person.objects.filter(pk=person.pk)
        data = request.POST if is_sent else None
        yield person, standing, OwnAddressForm(data, people=people, initial=initial, auto_id=f"id_%s_{person.pk}")


def _agreed(request: HttpRequest, show: Show, form: AddressForm, *, for_office: bool) -> bool:
    """Whether it is written down; if not, the form says why and holds what was typed."""
    if not form.is_valid():
        return False
    person, address = form.cleaned_data["person"], form.cleaned_data["address"]
    assert isinstance(request.user, Account)
    try:
        actions.agree_to_address(
            who=request.user, show=show, person=person, address=address, for_office=for_office
        )  # fmt: skip
    except NotNow as refused:
        form.add_error("address", refused.reason)
        return False
    messages.success(
        request, gettext("Written down: the catalogue may print the address of {name}.").format(name=person)
    )
    return True


@login_required
@require_POST
def record_paper(request: HttpRequest, slug: str, entry_id: int) -> HttpResponse:
    entry = access_entry(request.user, slug, entry_id, "take-entries")
    form = PaperAddressForm(request.POST, people=entry.dog.owners.all())
    if _agreed(request, entry.show, form, for_office=True):
        return redirect("entries:entry", slug=slug, entry_id=entry_id)
    return entry_page(request, entry, form)


@login_required
@require_POST
def end_by_paper(request: HttpRequest, slug: str, entry_id: int, consent_id: int) -> HttpResponse:
    """The owner has told the office, on paper or by a letter, that this is not to be any more."""
    entry = access_entry(request.user, slug, entry_id, "take-entries")
    told = (queries.ADDRESS, queries.PUBLIC)
    of_owners = Consent.objects.filter(show=entry.show, what__in=told, person__in=entry.dog.owners.all())
    consent = get_object_or_404(of_owners.select_related("show", "person"), pk=consent_id)
    who: Any = request.user
    actions.withdraw_told(who=who, consent=consent, for_office=True)
    messages.success(request, gettext("Withdrawn: {what}.").format(what=consent.get_what_display()))
    return redirect("entries:entry", slug=slug, entry_id=entry_id)
