"""Entering on the web, on a phone: the show, own dogs, a dog's facts, its classes."""

from collections.abc import Sequence
from typing import Any

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.utils.text import capfirst
from django.utils.translation import gettext
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from ringside.core import tries
from ringside.core.sentences import sentence
from ringside.dogs.models import Dog
from ringside.entries.checking import CheckedLine
from ringside.entries.forms import HandlerForm, show_refusals
from ringside.entries.handlers import handler_of
from ringside.entries.models import Entry, EntryRequest
from ringside.entries.own import access_own_dog
from ringside.entries.proofs.needs import needs_of
from ringside.entries.queries import facts_of
from ringside.entries.together.queries import offered
from ringside.entries.web import actions, queries
from ringside.entries.web.access import access_open_show, access_own_request
from ringside.entries.web.forms import AddressForm, DogForm, texts_of
from ringside.entries.web.offers import age_told, ages_of, findings_on, offers_for, partly_from_memory, wanted_of
from ringside.entries.web.opening import Standing, closes_on, public_shows, standing_of
from ringside.people.actions import account_for
from ringside.people.models import Account
from ringside.shows.books import class_name, offered_classes, rules_of
from ringside.shows.models import Show
from scoring.findings import Finding

# Each address asked for makes an account and may send a mail. Ours, no source.
MOST_ADDRESSES, MOST_ADDRESSES_IN_ALL = 20, 400


def _about(found: Show) -> dict[str, Any]:
    """What every page of this room says of the show."""
    return {"show": found, "standing": standing_of(found, timezone.localdate()).value, "closes": closes_on(found)}


@require_GET
def open_shows(request: HttpRequest) -> HttpResponse:
    today = timezone.localdate()
    shows = [_about(found) for found in public_shows(today)]
    return render(request, "entries/web/shows.html", {"shows": shows})


@require_GET
def show(request: HttpRequest, slug: str) -> HttpResponse:
    return _show_page(request, access_open_show(slug), AddressForm())


def _show_page(request: HttpRequest, found: Show, form: AddressForm) -> HttpResponse:
    book = rules_of(found)
    context = {
        **_about(found),
        "book": book,
        "classes": [
            (capfirst(class_name(rule)), ages_of(rule), partly_from_memory(rule)) for rule in offered_classes(found)
        ],
        "breeds": queries.breeds_judged(found),
        "form": form,
    }
    return render(request, "entries/web/show.html", context, status=400 if form.errors else 200)


@require_POST
def address(request: HttpRequest, slug: str) -> HttpResponse:
    """An account for the address, so that a code can be sent; it is worth nothing until the code has come back."""
    found = access_open_show(slug)
    form = AddressForm(request.POST)
    if not form.is_valid():
        return _show_page(request, found, form)
    most = {f"from-{request.META.get('REMOTE_ADDR', '')}": MOST_ADDRESSES, "in-all": MOST_ADDRESSES_IN_ALL}
    tries.limit("enter", most)
    tries.count("enter", most)
    email = form.cleaned_data["email"].strip().lower()
    account_for(email=email)
    context = {**_about(found), "email": email, "next": reverse("enter:dogs", args=[slug])}
    return render(request, "entries/web/code.html", context)


@login_required
@require_GET
def dogs(request: HttpRequest, slug: str) -> HttpResponse:
    found = access_open_show(slug)
    account = _account(request)
    context = {
        **_about(found),
        "dogs": queries.dogs_of(account, found),
        "asked": queries.requests_without_dog(account, found),
        "offered": offered(found),
    }
    return render(request, "entries/web/dogs.html", context)


def _account(request: HttpRequest) -> Account:
    assert isinstance(request.user, Account)
    return request.user


@login_required
@require_http_methods(["GET", "POST"])
def new_dog(request: HttpRequest, slug: str) -> HttpResponse:
    found, account = access_open_show(slug), _account(request)
    first = {"owner": queries.owner_name(account)}
    form = DogForm(request.POST or None, book=rules_of(found), initial=first)
    if request.method == "GET" or not form.is_valid():
        return _dog_page(request, found, form)
    line, same = _checked(found, form, account)
    if form.errors or not _seen(request, line):
        return _dog_page(request, found, form, line, same)
    if any(one.severity == "warns" for one in same):
        return _ask(request, found, form, line, same)
    kept = actions.keep_dog(who=account, show=found, texts=form.texts(account.email), today=timezone.localdate())
    messages.success(request, gettext("{dog} is kept among your dogs. Now its class.").format(dog=kept.name))
    return redirect("enter:dog", slug=slug, dog_id=kept.pk)


def _checked(found: Show, form: DogForm, account: Account, dog: Dog | None = None) -> tuple[CheckedLine, list[Finding]]:
    """What is to be said of the facts as typed; what stands in the way is beside its field in the form."""
    line = queries.check_dog(found, form.texts(account.email), timezone.localdate())
    same = queries.same_dogs(line.values, account, dog)
    show_refusals(form, [*line.findings, *same])
    return line, same


def _seen(request: HttpRequest, line: CheckedLine) -> bool:
    """Whether there is nothing to look at again, or it has been looked at."""
    return not line.warned or bool(request.POST.get("seen"))


def _ask(request: HttpRequest, found: Show, form: DogForm, line: CheckedLine, same: Sequence[Finding]) -> HttpResponse:
    """A dog under another owner: its class is chosen at once, and the entry goes to the office."""
    account, classes = _account(request), _classes(request)
    handler = HandlerForm(request.POST)
    refusing = [one for one in findings_on(line.values, classes, found, _facts(found)) if one.severity == "refuses"]
    if "send" not in request.POST or refusing or not handler.is_valid():
        said = [sentence(one) for one in refusing] if "send" in request.POST else []
        return _dog_page(request, found, form, line, same, class_errors=said, handler_form=handler)
    texts = {**form.texts(account.email), "handler": handler.cleaned_data["handler"]}
    asked = actions.ask_for_dog(who=account, show=found, texts=texts, classes=classes, today=timezone.localdate())
    messages.success(
        request,
        gettext("{dog} waits for the secretary, who asks and decides. You see it here.").format(dog=asked.name),
    )
    return redirect("enter:dogs", slug=found.slug)


def _facts(found: Show) -> Any:
    return facts_of(found, timezone.localdate())


def _classes(request: HttpRequest) -> list[str]:
    return list(dict.fromkeys(request.POST.getlist("class")))


def _dog_page(
    request: HttpRequest,
    found: Show,
    form: DogForm,
    line: CheckedLine | None = None,
    same: Sequence[Finding] = (),
    **more: Any,
) -> HttpResponse:
    doubts = [sentence(one) for one in same if one.severity == "warns"] if line and not form.errors else []
    warned = [sentence(one) for one in line.findings if one.severity == "warns"] if line else []
    context = {
        **_about(found),
        "form": form,
        "warned": warned,
        "doubts": doubts,
        "offers": offers_for(line.values, found, _facts(found)) if line and doubts else [],
        "chosen": _classes(request),
        "several": rules_of(found).classes_per_dog != 1,
        "handler_form": HandlerForm(request.POST or None),
        **more,
    }
    return render(request, "entries/web/facts.html", context, status=400 if form.errors else 200)


@login_required
@require_http_methods(["GET", "POST"])
def facts(request: HttpRequest, slug: str, dog_id: int) -> HttpResponse:
    found, account = access_open_show(slug), _account(request)
    own = access_own_dog(account, dog_id)
    form = DogForm(request.POST or None, book=rules_of(found), initial=texts_of(own))
    del form.fields["owner"]
    if request.method == "GET" or not form.is_valid():
        return _dog_page(request, found, form, dog=own)
    texts = {**form.texts(account.email), "owner": queries.owner_name(account)}
    line = queries.check_dog(found, texts, timezone.localdate())
    same = queries.same_dogs(line.values, account, own)
    show_refusals(form, [*line.findings, *(_refusing(one) for one in same)])
    if form.errors or not _seen(request, line):
        return _dog_page(request, found, form, line, dog=own)
    actions.keep_dog(who=account, show=found, texts=texts, today=timezone.localdate(), dog=own)
    messages.success(request, gettext("What is kept of {dog} is changed.").format(dog=own.name))
    return redirect("enter:dog", slug=slug, dog_id=own.pk)


def _refusing(finding: Finding) -> Finding:
    """An own dog cannot take over what stands under another owner."""
    return Finding(finding.code, "refuses", finding.facts)


@login_required
@require_http_methods(["GET", "POST"])
def dog(request: HttpRequest, slug: str, dog_id: int) -> HttpResponse:
    """One own dog at one show: what it is entered in, what is still missing, and the classes open to it."""
    found, account = access_open_show(slug), _account(request)
    own = access_own_dog(account, dog_id)
    classes = _classes(request)
    said: list[Finding] = []
    form = HandlerForm(request.POST or None, initial={"handler": handler_of(own, found)})
    if request.method == "POST":
        said = findings_on(wanted_of(own), classes, found, _facts(found))
        refused = any(one.severity == "refuses" for one in said)
        warned = any(one.severity == "warns" for one in said)
        if form.is_valid() and not refused and (not warned or request.POST.get("seen")):
            return _entered(request, found, own, classes, form.cleaned_data["handler"])
    return _classes_page(request, found, own, classes, said, form)


def _entered(request: HttpRequest, found: Show, own: Dog, classes: Sequence[str], handler: str) -> HttpResponse:
    done = actions.choose_classes(
        who=_account(request), show=found, dog=own, classes=classes, today=timezone.localdate(), handler=handler
    )
    names = queries.class_words(found, classes)
    if isinstance(done, EntryRequest):
        messages.success(
            request,
            gettext("{dog}, {classes}: entries are closed, so this waits for the secretary.").format(
                dog=own.name, classes=names
            ),
        )
    else:
        messages.success(request, gettext("{dog} is entered: {classes}.").format(dog=own.name, classes=names))
    return redirect("enter:dog", slug=found.slug, dog_id=own.pk)


def _classes_page(
    request: HttpRequest, found: Show, own: Dog, classes: Sequence[str], said: Sequence[Finding], form: HandlerForm
) -> HttpResponse:
    values, here = wanted_of(own), _facts(found)
    entries = list(Entry.objects.filter(show=found, dog=own, state=Entry.State.ENTERED).select_related("show_class"))
    offers = offers_for(values, found, here)
    refused = [sentence(one) for one in said if one.severity == "refuses"]
    about = _about(found)
    numbered = any(entry.number for entry in entries)
    waits = EntryRequest.objects.filter(show=found, dog=own, state=EntryRequest.State.WAITING).exists()
    is_open, is_late = about["standing"] == Standing.OPEN, about["standing"] == Standing.LATE
    context = {
        **about,
        "dog": own,
        "may_choose": not waits and ((is_open and not numbered) or (is_late and not entries)),
        "age": age_told(values, here),
        "entries": [(entry, queries.class_words(found, [entry.show_class.code])) for entry in entries],
        "needs": {need.code: need for some in needs_of(entries, found).values() for need in some}.values(),
        "requests": [
            (one, queries.class_words(found, one.classes), [sentence(doubt) for doubt in one.doubts])
            for one in EntryRequest.objects.filter(show=found, dog=own, account=_account(request))
            .exclude(state=EntryRequest.State.TAKEN_BACK)
            .order_by("-asked_at", "-id")
        ],
        "offers": [one for one in offers if one.is_open],
        "closed": [one for one in offers if not one.is_open],
        "chosen": list(classes) or [entry.show_class.code for entry in entries],
        "several": rules_of(found).classes_per_dog != 1,
        "handler_form": form,
        "refused": refused,
        "warned": [] if refused else [sentence(one) for one in said if one.severity == "warns"],
        "numbered": numbered,
        "may_forget": not Entry.objects.filter(dog=own).exists(),
    }
    return render(request, "entries/web/dog.html", context, status=400 if refused or form.errors else 200)


@login_required
@require_POST
def withdraw(request: HttpRequest, slug: str, dog_id: int) -> HttpResponse:
    found = access_open_show(slug)
    own = access_own_dog(request.user, dog_id)
    if actions.withdraw(who=_account(request), show=found, dog=own, today=timezone.localdate()):
        messages.success(request, gettext("{dog} is withdrawn. It stays among your dogs.").format(dog=own.name))
    return redirect("enter:dogs", slug=slug)


@login_required
@require_POST
def forget(request: HttpRequest, slug: str, dog_id: int) -> HttpResponse:
    own = access_own_dog(request.user, dog_id)
    name = own.name
    actions.forget_dog(who=_account(request), dog=own)
    messages.success(request, gettext("{dog} is deleted from your dogs.").format(dog=name))
    return redirect("enter:dogs", slug=slug)


@login_required
@require_POST
def take_back(request: HttpRequest, slug: str, waiting_id: int) -> HttpResponse:
    waiting = access_own_request(request.user, slug, waiting_id)
    actions.take_back(who=_account(request), request=waiting)
    messages.success(request, gettext("{dog}: taken back.").format(dog=waiting.name))
    return redirect("enter:dogs", slug=slug)
