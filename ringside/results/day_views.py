"""The show-day desk: who is there, who moves, who was left out, what is reported, what is corrected."""

from typing import Any

from django import forms
from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.utils import timezone
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy, ngettext
from django.views.decorators.http import require_GET, require_POST

from ringside.core.sentences import sentence
from ringside.entries import by_hand
from ringside.entries.forms import LineForm
from ringside.entries.models import Entry
from ringside.entries.numbering import entries_numbered
from ringside.results import corrections, day_actions, queries
from ringside.results.day_changes import changes_of
from ringside.results.day_forms import CorrectionForm, MoveForm, NoteForm, PresenceForm, ReportForm, WithdrawForm
from ringside.results.models import Report
from ringside.results.moves import reasons_for, targets_of, withdrawals_for
from ringside.results.wording import presence_words
from ringside.ring.presence import PRESENCES, mark_presence
from ringside.shows.access import access_class, access_show, roles_of
from ringside.shows.books import rules_of
from ringside.shows.may import may
from ringside.shows.models import Show
from scoring.rules.rulebook import SEXES

PER_PAGE = 100
MOST_CHANGES = 50
IS = {
    "present": gettext_lazy("Number {number} is present."),
    "absent": gettext_lazy("Number {number} is absent."),
    "excused": gettext_lazy("Number {number} is excused."),
}


@login_required
@require_GET
def day(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug)
    wanted, numbered = request.GET.get("number", "").strip(), []
    if wanted.isdecimal() and len(wanted) < 10:
        numbered = entries_numbered(show, int(wanted))
        if len(numbered) == 1:
            return redirect(f"/office/{slug}/results/day/{numbered[0].show_class_id}/#entry-{numbered[0].pk}")
        if not numbered:
            messages.error(request, _("No dog of this show has the number {number}.").format(number=wanted))
    page = Paginator(queries.classes_of(show), PER_PAGE).get_page(request.GET.get("page"))
    found = queries.compiled_many(page.object_list)
    context = {
        "show": show,
        "stage": "desk",
        "page": page,
        "classes": [(one, sum(row.presence != "present" for row in one.rows)) for one in found],
        "numbered": [(entry, queries.title_of(entry.show_class)) for entry in numbered],
        "changes": changes_of(show, MOST_CHANGES),
        "rights": rights_of(request.user, show),
    }
    return render(request, "results/day.html", context)


def rights_of(user: Any, show: Show) -> dict[str, bool]:
    """What of the day's work the person may do, by the table's name with underscores."""
    kinds = roles_of(user, show)
    doings = ("mark-presence", "change-entries", "type-classes", "write-reports", "read-reports", "correct-results")
    return {doing.replace("-", "_"): may(kinds, doing) for doing in doings}


@login_required
@require_GET
def day_class(request: HttpRequest, slug: str, class_id: int) -> HttpResponse:
    show_class = access_class(request.user, slug, class_id)
    show = show_class.show_breed.show
    found = queries.compiled(show_class)
    reasons = reasons_for(show)
    choices = [(code, reason.words) for code, reason in reasons.items()]
    targets = {sex: targets_of(show_class, sex) for sex in SEXES}
    rows = [
        (
            row,
            MoveForm(targets=targets[row.entry.dog.sex], reasons=choices, prefix=str(row.entry.pk)),
            _withdraw_form(show, row.entry),
        )
        for row in found.rows
    ]
    context = {
        "show": show,
        "stage": "desk",
        "found": found,
        "rows": rows,
        "presences": [(word, presence_words(word)) for word in PRESENCES],
        "reasons": reasons.values(),
        "rights": rights_of(request.user, show),
        "withdrawn": show_class.entries.filter(state=Entry.State.WITHDRAWN).select_related("dog"),
    }
    return render(request, "results/day_class.html", context)


def _withdraw_form(show: Show, entry: Entry, data: Any = None) -> WithdrawForm:
    reasons = [(code, reason.words) for code, reason in withdrawals_for(show, entry.dog.sex).items()]
    return WithdrawForm(data, reasons=reasons, prefix=f"withdraw-{entry.pk}")


def _entry(request: HttpRequest, slug: str, entry_id: int, doing: str) -> Entry:
    show = access_show(request.user, slug, doing)
    entries = Entry.objects.select_related(
        "show", "dog", "show_class__show_breed__ring", "show_class__show_breed__show"
    )
    return get_object_or_404(entries, show=show, pk=entry_id)


def _back(entry: Entry) -> HttpResponse:
    return redirect("results:day-class", slug=entry.show.slug, class_id=entry.show_class_id)


@login_required
@require_POST
def presence(request: HttpRequest, slug: str, entry_id: int) -> HttpResponse:
    entry = _entry(request, slug, entry_id, "mark-presence")
    form = PresenceForm(request.POST)
    if form.is_valid():
        mark_presence(who=request.user, entry=entry, presence=form.cleaned_data["presence"])
        words = IS[form.cleaned_data["presence"]]
        messages.success(request, words.format(number=entry.number))
    return _back(entry)


@login_required
@require_POST
def move(request: HttpRequest, slug: str, entry_id: int) -> HttpResponse:
    entry = _entry(request, slug, entry_id, "change-entries")
    reasons = [(code, reason.words) for code, reason in reasons_for(entry.show).items()]
    form = MoveForm(
        request.POST, targets=targets_of(entry.show_class, entry.dog.sex), reasons=reasons, prefix=str(entry.pk)
    )
    if not form.is_valid():
        messages.error(request, _("Choose the class and one of the reasons that the rules allow."))
        return _back(entry)
    to_class = day_actions.move_entry(who=request.user, entry=entry, **form.cleaned_data)
    words = _("Number {number} is in {title} now. Tell the ring's steward.")
    messages.success(request, words.format(number=entry.number, title=queries.title_of(to_class)))
    return redirect("results:day-class", slug=slug, class_id=to_class.pk)


@login_required
@require_POST
def withdraw(request: HttpRequest, slug: str, entry_id: int) -> HttpResponse:
    entry = _entry(request, slug, entry_id, "change-entries")
    form = _withdraw_form(entry.show, entry, request.POST)
    if not form.is_valid():
        messages.error(request, _("Choose one of the reasons that the rules allow; a dog that stays away is absent."))
        return _back(entry)
    day_actions.withdraw_entry(who=request.user, entry=entry, **form.cleaned_data)
    messages.success(request, _("Number {number} is withdrawn.").format(number=entry.number))
    return _back(entry)


@login_required
@require_POST
def take_back(request: HttpRequest, slug: str, entry_id: int) -> HttpResponse:
    entry = _entry(request, slug, entry_id, "change-entries")
    day_actions.take_back_withdrawal(who=request.user, entry=entry, note=request.POST.get("note", ""))
    words = _("Number {number} is entered again. Tell the ring's steward.")
    messages.success(request, words.format(number=entry.number))
    return _back(entry)


@login_required
def add(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug, "change-entries")
    form, note = LineForm(request.POST or None), NoteForm(request.POST or None)
    findings: list[tuple[str, str]] = []
    if request.method == "POST" and form.is_valid() and note.is_valid():
        today = timezone.localdate()
        line = by_hand.check(show, form.texts(), today)
        findings = [(finding.severity, sentence(finding)) for finding in line.findings]
        if not line.refused and (not findings or request.POST.get("seen")):
            return _added(request, show, form, note)
    refused = any(severity == "refuses" for severity, _ in findings)
    context = {"show": show, "stage": "desk", "form": form, "note": note, "findings": findings}
    return render(request, "results/add.html", {**context, "may_go_on": findings and not refused})


def _added(request: HttpRequest, show: Show, form: LineForm, note: NoteForm) -> HttpResponse:
    entry = day_actions.add_at_ring(
        who=request.user, show=show, texts=form.texts(), note=note.cleaned_data["note"], today=timezone.localdate()
    )
    words = _("{dog} has number {number}, and no printed paper has it in this class: tell judge and steward.")
    messages.success(request, words.format(dog=entry.dog.name, number=entry.number))
    return _back(entry)


@login_required
def reports(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug, "write-reports")
    form = ReportForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        day_actions.write_report(who=request.user, show=show, **form.cleaned_data)
        messages.success(request, _("Kept. The owner of the show and the secretary can read it."))
        return redirect("results:reports", slug=slug)
    may_read = may(roles_of(request.user, show), "read-reports")
    found = Report.objects.filter(show=show).select_related("entry__dog", "by").order_by("-at", "-id")
    context = {"show": show, "stage": "desk", "form": form, "may_read": may_read, "reports": found if may_read else []}
    return render(request, "results/reports.html", context)


@login_required
def correct(request: HttpRequest, slug: str, class_id: int) -> HttpResponse:
    show_class = access_class(request.user, slug, class_id, "correct-results")
    found = queries.compiled(show_class)
    grades = rules_of(show_class.show_breed.show).grades_for(show_class.code)
    form: forms.Form = CorrectionForm(request.POST or None, rows=found.rows, grades=grades)
    if request.method == "POST" and form.is_valid():
        made = corrections.correct_class(
            who=request.user, show_class=show_class, results=form.results(), why=form.cleaned_data["why"]
        )
        words = ngettext("{count} result is corrected.", "{count} results are corrected.", len(made))
        messages.success(request, words.format(count=len(made)))
        return redirect("results:class", slug=slug, class_id=class_id)
    context = {"show": show_class.show_breed.show, "stage": "results", "found": found, "form": form}
    return render(request, "results/correct.html", context)
