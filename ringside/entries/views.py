"""The office's entries: the list, an entry by hand, catalogue numbers, and the list as a file."""

from collections.abc import Sequence

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.translation import gettext, ngettext
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from ringside.core.exports import KINDS, table_as_file
from ringside.core.paging import query_without_page
from ringside.core.sentences import sentence
from ringside.entries import by_hand, lists, waiting
from ringside.entries.forms import FileForm, LineForm, show_refusals
from ringside.entries.models import Entry, EntryRequest
from ringside.entries.numbering import dogs_without_number, number_entries
from ringside.entries.proofs.needs import needs_of
from ringside.people.models import Account
from ringside.shows.access import access_show, roles_of
from ringside.shows.books import class_names, rules_of
from ringside.shows.may import may
from ringside.shows.models import Show
from scoring.findings import Finding
from scoring.standards import loader as standards


@login_required
@require_GET
def entry_list(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug)
    asked = lists.Asked.of(request.GET)
    page, breeds = lists.page_of(show, asked), dict(lists.breeds_in(show))
    needs, names = needs_of(page, show), class_names(show)
    context = {
        "show": show,
        "stage": "entries",
        "asked": asked,
        "page": page,
        "rows": [
            (
                entry,
                breeds.get(entry.show_class.show_breed.breed, ""),
                names.get(entry.show_class.code),
                needs[entry.pk],
            )
            for entry in page
        ],
        "breeds": breeds.items(),
        "states": Entry.State.choices,
        "files": show.entry_files.defer("content").order_by("-uploaded_at", "-id"),
        "file_form": FileForm(),
        "without_number": dogs_without_number(show),
        "waiting_count": show.entry_requests.filter(state=EntryRequest.State.WAITING).count(),
        "may_number": may(roles_of(request.user, show), "number-entries"),
        "query": query_without_page(request),
    }
    is_part = request.headers.get("HX-Request") and not request.headers.get("HX-History-Restore-Request")
    response = render(request, "entries/list.html#entry-rows" if is_part else "entries/list.html", context)
    response.headers["Vary"] = "HX-Request"
    return response


@login_required
@require_http_methods(["GET", "POST"])
def new_entry(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug, "take-entries")
    form = LineForm(request.POST or None, texts=_on_record(request, show))
    if request.method == "GET" or not form.is_valid():
        return _entry_page(request, show, form)
    today = timezone.localdate()
    lines = by_hand.check_each(show, form.texts(), today)
    found = by_hand.findings_of(lines)
    if request.POST.get("wait"):
        return _put_aside(request, show, form)
    if any(line.refused for line in lines) or (found and not request.POST.get("seen")):
        return _entry_page(request, show, form, found)
    entries = by_hand.enter_each(who=request.user, show=show, texts=form.texts(), today=today)
    names = class_names(show)
    classes = ", ".join(names.get(entry.show_class.code, entry.show_class.code) for entry in entries)
    messages.success(request, gettext("{dog} is entered: {classes}.").format(dog=entries[0].dog.name, classes=classes))
    return redirect("entries:new" if "another" in request.POST else "entries:list", slug=slug)


def _on_record(request: HttpRequest, show: Show) -> dict[str, str]:
    """The facts of the dog that was found on record, where one was chosen."""
    chosen = request.GET.get("dog", "")
    is_id = chosen.isdecimal() and len(chosen) < 18
    return by_hand.texts_of(_account(request), int(chosen), show) if is_id else {}


def _account(request: HttpRequest) -> Account:
    assert isinstance(request.user, Account)
    return request.user


def _put_aside(request: HttpRequest, show: Show, form: LineForm) -> HttpResponse:
    """Keeps what is typed for a decision, good or not."""
    texts, why = form.texts(), request.POST.get("why", "")
    if not why.strip() or not texts["name"].strip():
        form.add_error(None, gettext("To put it aside, write the dog's name, and why it waits."))
        return _entry_page(request, show, form)
    waiting.put_aside(
        who=_account(request), show=show, texts=texts, classes=by_hand.classes_in(texts["class"]), why=why
    )
    messages.success(request, gettext("{dog} waits for a decision.").format(dog=texts["name"]))
    return redirect("entries:waiting", slug=show.slug)


def _entry_page(request: HttpRequest, show: Show, form: LineForm, found: Sequence[Finding] = ()) -> HttpResponse:
    show_refusals(form, found)
    asked = request.GET.get("q", "")
    context = {
        "show": show,
        "stage": "entries",
        "form": form,
        "findings": [(one.severity, sentence(one)) for one in found if one.severity != "refuses"],
        "may_go_on": bool(found) and not form.errors,
        "several": rules_of(show).classes_per_dog != 1,
        "asked": asked,
        "dogs": [(dog, gettext(standards.load(dog.breed).name)) for dog in by_hand.dogs_like(_account(request), asked)],
        "why": request.POST.get("why", ""),
    }
    return render(request, "entries/new.html", context)


@login_required
@require_POST
def number(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug, "number-entries")
    given = number_entries(who=request.user, show=show)
    messages.success(
        request,
        ngettext(
            "{given} entry has its catalogue number. It stays as it is from now on.",
            "{given} entries have their catalogue number. Numbers stay as they are from now on.",
            given,
        ).format(given=given),
    )
    return redirect("entries:list", slug=slug)


@login_required
@require_GET
def export(request: HttpRequest, slug: str, kind: str) -> HttpResponse:
    show = access_show(request.user, slug)
    if kind not in KINDS:
        raise Http404
    content = lists.written(show, lists.Asked.of(request.GET), kind)
    return table_as_file(content, kind, f"entries-{show.slug}")
