"""The form of a brace, a group or a young handler."""

from collections.abc import Sequence
from typing import Any

from django import forms
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from ringside.entries.models import Entry
from ringside.shows.forms import DateInput
from scoring.rules.rulebook import Competition


class GroupForm(forms.Form):
    """`own` are the entries a person may tick; the office writes numbers or names instead."""

    code = forms.ChoiceField(label=_("What is entered"), required=False)
    name = forms.CharField(
        label=_("Name"), max_length=160, required=False, help_text=_("The kennel, the parent or the young handler.")
    )
    members = forms.CharField(
        label=_("Dogs"), required=False, max_length=2000, widget=forms.Textarea(attrs={"rows": 5}),
        help_text=_("Catalogue numbers, or registered names as entered; one in each line."),
    )  # fmt: skip
    born = forms.DateField(
        label=_("Handler's date of birth"),
        required=False,
        widget=DateInput(),
        help_text=_("For junior handling only. The age is kept, the date is not."),
    )

    def __init__(
        self, *args: Any, competitions: Sequence[Competition], own: Sequence[Entry] | None = None, **kwargs: Any
    ) -> None:
        super().__init__(*args, **kwargs)
        self.own = own
        self.fields["code"].choices = [("", gettext("Choose")), *((one.code, told(one)) for one in competitions)]
        if own is not None:
            choices = [(str(entry.pk), entry.dog.name) for entry in own]
            self.fields["members"] = forms.MultipleChoiceField(
                label=_("Your entered dogs"), required=False, choices=choices, widget=forms.CheckboxSelectMultiple
            )

    def ticked(self) -> list[Entry]:
        chosen = set(self.cleaned_data.get("members") or ())
        return [entry for entry in self.own or () if str(entry.pk) in chosen]


def told(one: Competition) -> str:
    """The name, and whether its terms come from memory."""
    asked = ("least", "most", "same", "one_of_each", "least_years", "most_years")
    terms = [key for key in asked if getattr(one, key) not in (None, (), False, 0)]
    if any(one.provenance.of(key).verified == "memory" for key in terms):
        return gettext("{name} (terms partly from memory, to be confirmed)").format(name=gettext(one.name))
    return gettext(one.name)
