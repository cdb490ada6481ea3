"""The office's list of what exhibitors owe and have paid, and the account of one of them."""

from typing import Any

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.text import capfirst
from django.utils.translation import gettext as _
from django.utils.translation import ngettext
from django.views.decorators.http import require_GET, require_POST

from ringside.core.denied import NotNow
from ringside.core.exports import KINDS, table_as_file
from ringside.core.paging import query_without_page
from ringside.dogs.models import Ownership
from ringside.entries.models import Entry
from ringside.fees import accounts, actions, charging, invoicing, setting
from ringside.fees.forms import ChangeForm, PaymentForm
from ringside.fees.models import FeeChange, Payment
from ringside.fees.one import OneAccount, account_of, line_of, person_at
from ringside.shows.access import access_show, roles_of
from ringside.shows.may import may
from ringside.shows.models import Show


@login_required
@require_GET
def account_list(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug, "see-fees")
    asked, roles = accounts.Asked.of(request.GET), roles_of(request.user, show)
    found = accounts.found(show, asked.text)
    shown = accounts.listed(found, asked)
    context = {
        "show": show, "stage": "fees", "asked": asked, "page": accounts.page_of(shown, asked),
        "totals": accounts.totals(shown), "counts": accounts.counts(found), "query": query_without_page(request),
        "currency": accounts.terms_of(show).currency, "may_set": may(roles, "set-fees"),
        "may_keep": may(roles, "keep-payments"), "to_bill": accounts.to_bill(found),
        "without_owner": accounts.without_owner(show), "has_table": show.fee_lines.exists(),  # type: ignore[attr-defined]
    }  # fmt: skip
    return render(request, "fees/list.html", context)


@login_required
@require_GET
def export(request: HttpRequest, slug: str, kind: str) -> HttpResponse:
    show = access_show(request.user, slug, "see-fees")
    if kind not in KINDS:
        raise Http404
    asked = accounts.Asked.of(request.GET)
    shown = accounts.listed(accounts.found(show, asked.text), asked)
    content = accounts.written(shown, accounts.terms_of(show).currency, kind)
    return table_as_file(content, kind, f"fees-{show.slug}")


@login_required
def account(request: HttpRequest, slug: str, exhibitor_id: int) -> HttpResponse:
    """One exhibitor's account; a payment or refund is typed in on the same page."""
    show = access_show(request.user, slug, "see-fees" if request.method == "GET" else "keep-payments")
    person, today = person_at(show, exhibitor_id), timezone.localdate()
    found = account_of(show, person)
    form = PaymentForm(
        request.POST or None, currency=found.terms.currency, today=today,
        initial={"day": today, "amount": found.still_owed_plain},
    )  # fmt: skip
    if request.method == "POST" and form.is_valid():
        try:
            paid = actions.record_payment(who=request.user, show=show, person=person, **form.cleaned_data)
        except NotNow as refused:
            form.add_error(None, refused.reason)
        else:
            messages.success(request, _("{money}: recorded.").format(money=capfirst(paid.get_kind_display())))
            return redirect("fees:account", slug=slug, exhibitor_id=exhibitor_id)
    return render(request, "fees/account.html", _page(request, found, form))


def _page(request: HttpRequest, found: OneAccount, form: PaymentForm) -> dict[str, Any]:
    may_keep = may(roles_of(request.user, found.show), "keep-payments")
    return {"show": found.show, "stage": "fees", "account": found, "form": form, "may_keep": may_keep}


@login_required
@require_POST
def member(request: HttpRequest, slug: str, exhibitor_id: int) -> HttpResponse:
    show = access_show(request.user, slug, "keep-payments")
    person = person_at(show, exhibitor_id)
    setting.set_member(who=request.user, show=show, person=person, is_member=request.POST.get("member") == "yes")
    return redirect("fees:account", slug=slug, exhibitor_id=exhibitor_id)


@login_required
@require_POST
def invoice(request: HttpRequest, slug: str, exhibitor_id: int) -> HttpResponse:
    show = access_show(request.user, slug, "keep-payments")
    try:
        made = invoicing.issue_invoice(who=request.user, show=show, person=person_at(show, exhibitor_id))
    except NotNow as refused:
        messages.error(request, refused.reason)
    else:
        messages.success(request, _("Invoice {number} is made.").format(number=made.number))
    return redirect("fees:account", slug=slug, exhibitor_id=exhibitor_id)


@login_required
@require_POST
def missing_invoices(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug, "keep-payments")
    try:
        count = invoicing.issue_missing(who=request.user, show=show)
    except NotNow as refused:
        messages.error(request, refused.reason)
    else:
        told = ngettext("{count} invoice is made.", "{count} invoices are made.", count)
        messages.success(request, told.format(count=count))
    return redirect("fees:list", slug=slug)


@login_required
@require_POST
def strike(request: HttpRequest, slug: str, payment_id: int) -> HttpResponse:
    show = access_show(request.user, slug, "keep-payments")
    payment = Payment.objects.select_related("show", "person").filter(show=show, pk=payment_id).first()
    if payment is None:
        raise Http404
    try:
        actions.strike_payment(who=request.user, payment=payment, why=request.POST.get("why", "")[:300])
    except NotNow as refused:
        messages.error(request, refused.reason)
    else:
        messages.success(request, _("Struck out. The line stays to be seen."))
    return redirect("fees:account", slug=slug, exhibitor_id=payment.person_id)


@login_required
def change(request: HttpRequest, slug: str, entry_id: int) -> HttpResponse:
    """Another fee for one entry, with the reason; or the table's again."""
    show = access_show(request.user, slug, "keep-payments")
    entry, payer = _entry(show, entry_id)
    there = FeeChange.objects.filter(entry=entry).first()
    form = ChangeForm(request.POST or None, instance=there, currency=accounts.terms_of(show).currency)
    done = False
    if request.method == "POST" and "undo" in request.POST:
        actions.undo_fee_change(who=request.user, entry=entry)
        done = True
    elif request.method == "POST" and form.is_valid():
        actions.change_fee(who=request.user, entry=entry, **form.cleaned_data)
        done = True
    if done:
        messages.success(request, _("The fee of this entry is changed."))
        return redirect("fees:account", slug=slug, exhibitor_id=payer) if payer else redirect("fees:list", slug=slug)
    context = {
        "show": show, "stage": "fees", "entry": entry, "payer": payer, "form": form, "is_changed": bool(there),
        "line": line_of(entry, payer),
    }  # fmt: skip
    return render(request, "fees/change.html", context)


def _entry(show: Show, entry_id: int) -> tuple[Entry, int | None]:
    found = Entry.objects.select_related("dog", "show", "show_class").filter(show=show, pk=entry_id).first()
    if found is None:
        raise Http404
    payers = charging.first_of(Ownership.objects.filter(dog=found.dog))
    return found, payers.get(found.dog_id)
