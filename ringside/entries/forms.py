"""The office's forms for files and lines of entries."""

from collections.abc import Iterable, Mapping
from typing import Any

from django import forms
from django.utils.text import capfirst
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from ringside.core.denied import NotNow
from ringside.core.sentences import sentence
from ringside.entries.handlers import readable
from ringside.entries.models import EntryFile
from ringside.entries.reading.dates import STYLES
from ringside.entries.reading.encodings import ENCODINGS
from ringside.entries.reading.limits import MOST_BYTES
from ringside.entries.reading.separated import DELIMITERS
from ringside.entries.reading.words import FIELDS
from scoring.findings import Finding

LONGEST = 300
HANDLER_HELP = _("Who presents the dog. Empty: the owner.")
HELP = {
    "titles": _("As the rules name them, with commas."),
    "certificates": _("Such as WCC, with commas."),
    "born": _("As 31.12.2025 or 2025-12-31."),
    "sex": _("dog or bitch"),
    "neutered": _("yes or no"),
    "handler": HANDLER_HELP,
}


def show_refusals(form: forms.Form, found: Iterable[Finding]) -> None:
    """Puts what stands in the way beside its field and on top; all of it at once."""
    for finding in found:
        if finding.severity == "refuses":
            field = finding.facts.get("field")
            form.add_error(field if field in form.fields else None, sentence(finding))


def _said(words: Mapping[str, str]) -> list[tuple[str, str]]:
    return [(code, gettext(one)) for code, one in words.items()]


class FileForm(forms.Form):
    file = forms.FileField(label=_("Entry file"), help_text=_("CSV or .xlsx, as the club's list was saved."))

    def clean_file(self) -> Any:
        file = self.cleaned_data["file"]
        if file.size > MOST_BYTES:
            raise forms.ValidationError(
                gettext("This file is larger than {most} MB. Save the sheet with the entries alone.").format(
                    most=MOST_BYTES // 1024 // 1024
                )
            )
        return file


class ReadingForm(forms.Form):
    """How a text file is to be read, where what was recognised is not right."""

    encoding = forms.ChoiceField(label=_("Encoding"), choices=lambda: _said(ENCODINGS))
    delimiter = forms.ChoiceField(label=_("Separator"), choices=lambda: _said(DELIMITERS))


class ColumnsForm(forms.Form):
    """Which field each column holds, and how its dates are written."""

    date_style = forms.ChoiceField(
        label=_("Dates are written"), choices=lambda: [(code, gettext(told[0])) for code, told in STYLES.items()]
    )

    def __init__(self, *args: Any, file: EntryFile, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        held = {at: field for field, at in file.columns.items()}
        choices = [("", gettext("not used")), *_said(FIELDS)]
        for at, heading in enumerate(file.headings):
            self.fields[f"column_{at}"] = forms.ChoiceField(
                label=heading or gettext("column {number}").format(number=at + 1),
                choices=choices,
                required=False,
                initial=held.get(at, ""),
            )
        self.fields["date_style"].initial = file.date_style

    def clean(self) -> dict[str, Any]:
        data = super().clean() or {}
        chosen = [field for name, field in data.items() if name.startswith("column_") and field]
        twice = {field for field in chosen if chosen.count(field) > 1}
        if twice:
            names = ", ".join(gettext(FIELDS[field]) for field in sorted(twice))
            raise forms.ValidationError(
                gettext("Chosen for two columns: {names}. Each field can come from one column only.").format(
                    names=names
                )
            )
        return data

    def columns(self) -> dict[str, int]:
        data = self.cleaned_data
        return {field: int(name[7:]) for name, field in data.items() if name.startswith("column_") and field}


class HandlerForm(forms.Form):
    """The handler of an entry; what cannot be a name stays as it was typed, with the reason."""

    handler = forms.CharField(label=_("Handler"), required=False, max_length=LONGEST, help_text=HANDLER_HELP)

    def clean_handler(self) -> str:
        try:
            return readable(self.cleaned_data["handler"])
        except NotNow as refused:
            raise forms.ValidationError(refused.reason) from None


class LineForm(forms.Form):
    """One line's cells by field. Everything is text: what is wrong is said, and stays as it was typed."""

    def __init__(self, *args: Any, texts: dict[str, str] | None = None, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        for field, label in FIELDS.items():
            self.fields[field] = forms.CharField(
                label=capfirst(gettext(label)),
                required=False,
                max_length=LONGEST,
                strip=False,
                initial=(texts or {}).get(field, ""),
                help_text=HELP.get(field, ""),
            )

    def texts(self) -> dict[str, str]:
        return {field: self.cleaned_data.get(field, "") for field in FIELDS}
