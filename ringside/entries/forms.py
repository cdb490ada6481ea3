"""The office's forms for files and lines of entries."""

from typing import Any

from django import forms

from ringside.entries.models import EntryFile
from ringside.entries.reading.dates import STYLES
from ringside.entries.reading.encodings import ENCODINGS
from ringside.entries.reading.limits import MOST_BYTES
from ringside.entries.reading.separated import DELIMITERS
from ringside.entries.reading.words import FIELDS

LONGEST = 300
HELP = {
    "titles": "As the rules name them, with commas.",
    "certificates": "Such as WCC, with commas.",
    "born": "As 31.12.2025 or 2025-12-31.",
    "sex": "dog or bitch",
    "neutered": "yes or no",
}


class FileForm(forms.Form):
    file = forms.FileField(label="Entry file", help_text="CSV or .xlsx, as the club's list was saved.")

    def clean_file(self) -> Any:
        file = self.cleaned_data["file"]
        if file.size > MOST_BYTES:
            raise forms.ValidationError(
                f"This file is larger than {MOST_BYTES // 1024 // 1024} MB. Save the sheet with the entries alone."
            )
        return file


class ReadingForm(forms.Form):
    """How a text file is to be read, where what was recognised is not right."""

    encoding = forms.ChoiceField(choices=list(ENCODINGS.items()))
    delimiter = forms.ChoiceField(label="Separator", choices=list(DELIMITERS.items()))


class ColumnsForm(forms.Form):
    """Which field each column holds, and how its dates are written."""

    date_style = forms.ChoiceField(
        label="Dates are written", choices=[(code, told[0]) for code, told in STYLES.items()]
    )

    def __init__(self, *args: Any, file: EntryFile, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        held = {at: field for field, at in file.columns.items()}
        choices = [("", "not used"), *FIELDS.items()]
        for at, heading in enumerate(file.headings):
            self.fields[f"column_{at}"] = forms.ChoiceField(
                label=heading or f"column {at + 1}", choices=choices, required=False, initial=held.get(at, "")
            )
        self.fields["date_style"].initial = file.date_style

    def clean(self) -> dict[str, Any]:
        data = super().clean() or {}
        chosen = [field for name, field in data.items() if name.startswith("column_") and field]
        twice = {field for field in chosen if chosen.count(field) > 1}
        if twice:
            names = ", ".join(FIELDS[field] for field in sorted(twice))
            raise forms.ValidationError(f"Chosen for two columns: {names}. Each field can come from one column only.")
        return data

    def columns(self) -> dict[str, int]:
        data = self.cleaned_data
        return {field: int(name[7:]) for name, field in data.items() if name.startswith("column_") and field}


class LineForm(forms.Form):
    """One line's cells by field. Everything is text: what is wrong is said, and stays as it was typed."""

    def __init__(self, *args: Any, texts: dict[str, str] | None = None, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        for field, label in FIELDS.items():
            self.fields[field] = forms.CharField(
                label=label.capitalize(),
                required=False,
                max_length=LONGEST,
                strip=False,
                initial=(texts or {}).get(field, ""),
                help_text=HELP.get(field, ""),
            )

    def texts(self) -> dict[str, str]:
        return {field: self.cleaned_data.get(field, "") for field in FIELDS}
