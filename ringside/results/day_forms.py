"""The forms of the show-day desk and of corrections."""

from collections.abc import Sequence
from typing import Any

from django import forms
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy

from ringside.results.corrections import PRESENCES, Result
from ringside.results.models import Report
from ringside.results.queries import Row
from ringside.results.wording import presence_words
from ringside.ring.presence import PRESENCES as MARKED
from ringside.shows.books import grade_name
from scoring.rules.rulebook import Grade

WHY = {"max_length": 300, "required": True}
FIELDS = {
    "presence": gettext_lazy("Presence of number {number}"),
    "grade": gettext_lazy("Grade of number {number}"),
    "place": gettext_lazy("Place of number {number}"),
    "reason": gettext_lazy("Reason of number {number}"),
}


class PresenceForm(forms.Form):
    presence = forms.ChoiceField(choices=[(word, word) for word in MARKED])


class MoveForm(forms.Form):
    target = forms.ChoiceField(label=gettext_lazy("To the class"))
    reason = forms.ChoiceField(label=gettext_lazy("Because of"))
    note = forms.CharField(label=gettext_lazy("In words"), max_length=300, required=False)

    def __init__(self, *args: Any, targets: Sequence[Any], reasons: Sequence[Any], **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["target"].choices = targets
        self.fields["reason"].choices = reasons


class WithdrawForm(forms.Form):
    reason = forms.ChoiceField(label=gettext_lazy("Because"))
    note = forms.CharField(label=gettext_lazy("In words"), max_length=300, required=False)

    def __init__(self, *args: Any, reasons: Sequence[Any], **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["reason"].choices = [("", _("Choose")), *reasons]


class NoteForm(forms.Form):
    note = forms.CharField(label=gettext_lazy("Why"), **WHY)


class ReportForm(forms.Form):
    kind = forms.ChoiceField(label=gettext_lazy("What is reported"), choices=Report.Kind.choices)
    number = forms.IntegerField(
        label=gettext_lazy("Catalogue number, if a dog is concerned"), required=False, min_value=1
    )
    text = forms.CharField(
        label=gettext_lazy("What happened, who saw it, what was done"), widget=forms.Textarea, max_length=5000
    )


class ResultLines(forms.Form):
    """One line for each dog of a class, filled with what is known of it."""

    presences: Sequence[str] = PRESENCES

    def __init__(self, *args: Any, rows: Sequence[Row], grades: Sequence[Grade], **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.rows = rows
        for row in rows:
            self._add_line(row, [("", _("no grade")), *((grade.code, grade_name(grade)) for grade in grades)])

    def _add_line(self, row: Row, grades: Sequence[tuple[str, str]]) -> None:
        key = row.entry.pk
        presences = [(word, presence_words(word)) for word in self.presences]
        self.fields[f"presence_{key}"] = forms.ChoiceField(choices=presences, initial=row.presence)
        self.fields[f"grade_{key}"] = forms.ChoiceField(choices=grades, initial=row.grade, required=False)
        self.fields[f"place_{key}"] = forms.IntegerField(initial=row.place, required=False, min_value=1, max_value=999)
        self.fields[f"reason_{key}"] = forms.CharField(initial=row.reason, required=False, max_length=2000)
        for name, words in FIELDS.items():
            self.fields[f"{name}_{key}"].widget.attrs["aria-label"] = words.format(number=row.entry.number)

    def lines(self) -> list[tuple[Row, Any]]:
        return [(row, [self[f"{name}_{row.entry.pk}"] for name in FIELDS]) for row in self.rows]

    def results(self) -> dict[int, Result]:
        data = self.cleaned_data
        return {
            key: Result(data[f"presence_{key}"], data[f"grade_{key}"], data[f"place_{key}"], data[f"reason_{key}"])
            for key in (row.entry.pk for row in self.rows)
        }


class CorrectionForm(ResultLines):
    """The lines of a published class, and why it is corrected."""

    why = forms.CharField(
        label=gettext_lazy("Why it is corrected"), help_text=gettext_lazy("Shows beside the result."), **WHY
    )


class WhyNoPage(forms.CharField):
    """What stands in for a page that the judge signed."""

    def __init__(self) -> None:
        super().__init__(
            label=gettext_lazy("Why there is no photo of the page"), max_length=300, required=False,
            help_text=gettext_lazy("Only where there is none: the page is lost, or the judge has left with it."),
        )  # fmt: skip


class PaperForm(ResultLines):
    """The lines of a class as the judge's page has them; the page itself comes as a file beside them."""

    presences = MARKED
    why_no_page = WhyNoPage()
