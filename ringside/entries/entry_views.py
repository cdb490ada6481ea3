"""The office's page of one entry, with its proofs; and what the show asks of all of them."""

from typing import Any

from django import forms
from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from ringside.entries import queries
from ringside.entries.access import access_entry
from ringside.entries.consents.forms import PaperAddressForm
from ringside.entries.consents.queries import ADDRESS, PUBLIC, consents_on
from ringside.entries.forms import HandlerForm
from ringside.entries.handlers import name_handler
from ringside.entries.models import Entry, EntryTerms
from ringside.entries.proofs.actions import ask_terms
from ringside.entries.proofs.needs import needs_of
from ringside.entries.together.forms import told
from ringside.shows.access import access_show, roles_of
from ringside.shows.books import class_names, rules_of
from ringside.shows.may import may
from ringside.shows.models import Show
from scoring.standards import loader as standards


class TermsForm(forms.Form):
    vaccination = forms.CharField(
        label=_("Vaccination asked for"),
        max_length=200,
        required=False,
        help_text=_("In words, such as: rabies, at least 21 days old. Empty: none is asked. Local law decides."),
    )
    groups = forms.MultipleChoiceField(
        label=_("Offered beside the classes"), required=False, widget=forms.CheckboxSelectMultiple
    )

    def __init__(self, *args: Any, show: Show, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["groups"].choices = [(one.code, told(one)) for one in rules_of(show).competitions]


@login_required
@require_GET
def entry(request: HttpRequest, slug: str, entry_id: int) -> HttpResponse:
    return entry_page(request, access_entry(request.user, slug, entry_id, "see-office"))


def entry_page(
    request: HttpRequest, found: Entry, form: PaperAddressForm | None = None, handler: HandlerForm | None = None
) -> HttpResponse:
    """The page of one entry; `form` is that of a consent on paper, `handler` the handler's, where to be mended."""
    names = class_names(found.show)
    rights = roles_of(request.user, found.show)
    context = {
        "show": found.show,
        "stage": "entries",
        "entry": found,
        "breed": gettext(standards.load(found.dog.breed).name),
        "class_name": names.get(found.show_class.code, found.show_class.code),
        "needs": needs_of([found], found.show)[found.pk],
        "others": [(one, names.get(one.show_class.code, "")) for one in queries.other_entries(found)],
        "may_tick": may(rights, "tick-proofs"),
        "may_record": may(rights, "take-entries"),
        "consents": consents_on(found),
        "told": (ADDRESS, PUBLIC),
        "handler_form": handler or HandlerForm(initial={"handler": found.handler}),
        "form": form or PaperAddressForm(people=found.dog.owners.all()),
        "audit": queries.audit_of_entry(found),
    }
    return render(request, "entries/entry.html", context, status=400 if form or handler else 200)


@login_required
@require_POST
def handler(request: HttpRequest, slug: str, entry_id: int) -> HttpResponse:
    found = access_entry(request.user, slug, entry_id, "take-entries")
    form = HandlerForm(request.POST)
    if not form.is_valid():
        return entry_page(request, found, handler=form)
    name_handler(who=request.user, entry=found, **form.cleaned_data)
    messages.success(request, gettext("Kept."))
    return redirect("entries:entry", slug=slug, entry_id=found.pk)


@login_required
@require_http_methods(["GET", "POST"])
def terms(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug, "change-show")
    kept = EntryTerms.objects.filter(show=show).first()
    first = {"vaccination": kept.vaccination, "groups": kept.groups} if kept else None
    form = TermsForm(request.POST if request.method == "POST" else None, show=show, initial=first)
    if form.is_valid():
        ask_terms(who=request.user, show=show, **form.cleaned_data)
        messages.success(request, gettext("Kept. Entries that need a proof now say so."))
        return redirect("entries:terms", slug=slug)
    return render(request, "entries/terms.html", {"show": show, "stage": "entries", "form": form})
