"""The forms of setting a show up."""

from datetime import timedelta
from typing import Any

from django import forms
from django.utils.text import slugify

from ringside.shows.models import Show
from scoring.rules import loader as rules
from scoring.standards import loader as standards

LONGEST_SHOW = 10


def rule_choices() -> list[tuple[str, str]]:
    return [(code, rules.load(code).name) for code in rules.codes()]


def breed_choices() -> list[tuple[str, str]]:
    return sorted(((one.code, one.name) for one in standards.all_standards()), key=lambda choice: choice[1])


class DateInput(forms.DateInput):
    input_type = "date"

    def __init__(self) -> None:
        super().__init__(format="%Y-%m-%d")


class ShowForm(forms.ModelForm):  # type: ignore[type-arg]
    rules = forms.ChoiceField(label="Rules", choices=rule_choices, help_text="The governing body whose rules count.")

    class Meta:
        model = Show
        fields = ["name", "place", "rules", "first_day", "last_day", "entries_close_on"]
        labels = {"name": "Name of the show", "place": "Place", "entries_close_on": "Entries close on"}
        widgets = {"first_day": DateInput(), "last_day": DateInput(), "entries_close_on": DateInput()}

    def clean_name(self) -> str:
        name: str = self.cleaned_data["name"]
        slug = slugify(name)
        if not slug:
            raise forms.ValidationError("Give a name with at least one plain letter or digit, for its address.")
        if Show.objects.filter(slug=slug[:60]).exclude(pk=self.instance.pk).exists():
            raise forms.ValidationError("There is a show of this name already. Add the year, for example.")
        return name

    def clean(self) -> dict[str, Any]:
        data = super().clean() or {}
        first, last, close = (data.get(name) for name in ("first_day", "last_day", "entries_close_on"))
        if first and last and last < first:
            self.add_error("last_day", "The last day lies before the first.")
        elif first and last and last - first > timedelta(days=LONGEST_SHOW):
            self.add_error("last_day", f"A show lasts {LONGEST_SHOW} days at the most: look at both dates.")
        if close and first and close > first:
            self.add_error("entries_close_on", "Entries close before the show begins.")
        return data


class BreedForm(forms.Form):
    """A breed of the show: who judges it, in which ring, on which day."""

    breed = forms.ChoiceField(choices=breed_choices)
    judge_name = forms.CharField(label="Judge", max_length=120)
    judge_email = forms.EmailField(label="Judge's e-mail", help_text="The judge signs in with a code sent there.")
    ring = forms.CharField(label="Ring", max_length=20)
    day = forms.DateField(label="Day", widget=DateInput())

    def __init__(self, *args: Any, show: Show, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.show = show

    def clean_day(self) -> Any:
        day = self.cleaned_data["day"]
        if not self.show.first_day <= day <= self.show.last_day:
            raise forms.ValidationError(
                f"The show runs from {self.show.first_day:%d %B %Y} to {self.show.last_day:%d %B %Y}."
            )
        return day


class RoleForm(forms.Form):
    email = forms.EmailField(label="E-mail", help_text="They sign in with a code sent there.")
    kind = forms.ChoiceField(
        label="Role",
        choices=[("secretary", "secretary"), ("assistant", "assistant"), ("steward", "steward"), ("writer", "writer")],
    )
