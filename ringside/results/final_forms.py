"""The forms of the finals: catalogue numbers by place, who did not come, who judges."""

from collections.abc import Sequence
from itertools import pairwise
from typing import Any

from django import forms
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy

from ringside.results.awards import Line
from ringside.results.day_forms import WhyNoPage
from ringside.results.finals import Stands


class JudgeForm(forms.Form):
    name = forms.CharField(label=gettext_lazy("Judge of this final"), max_length=120)
    email = forms.EmailField(label=gettext_lazy("E-mail, if known"), required=False)


class PlacesForm(forms.Form):
    """One catalogue number a place; places left empty stand after those that are filled."""

    def __init__(self, *args: Any, stand: Stands, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.most = stand.offered.award.places
        now = {place: entry.number for place, entry in stand.placed}
        for place in range(1, self.most + 1):
            label = _("Number") if self.most == 1 else _("Place {place}, number").format(place=place)
            self.fields[f"place_{place}"] = forms.IntegerField(
                label=label, required=False, min_value=1, max_value=999_999, initial=now.get(place),
                widget=forms.NumberInput(attrs={"class": "short", "inputmode": "numeric"}),
            )  # fmt: skip

    def place_fields(self) -> list[Any]:
        return [self[f"place_{place}"] for place in range(1, self.most + 1)]

    def clean(self) -> dict[str, Any]:
        data = super().clean() or {}
        told = [data.get(f"place_{place}") for place in range(1, self.most + 1)]
        if any(number is None and later is not None for number, later in pairwise(told)):
            raise forms.ValidationError(_("Places run from 1 without a gap: fill the place left empty."))
        return data

    def places(self) -> list[int]:
        told = [self.cleaned_data[f"place_{place}"] for place in range(1, self.most + 1)]
        return [number for number in told if number is not None]


class PaperAwardsForm(forms.Form):
    """One line an award of a breed as the judge's page has it; the page itself comes as a file beside them."""

    # Whether what is typed does not go with the rules: only then the page asks whether the judge's page says so.
    is_against_the_rules = False

    why_no_page = WhyNoPage()
    as_written = forms.BooleanField(
        label=gettext_lazy("The judge's page says so all the same"), required=False,
        help_text=gettext_lazy("The judge decides: it is kept as the page has it, and what is named stays beside it."),
    )  # fmt: skip

    def __init__(self, *args: Any, lines: Sequence[Line], **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.awards = lines
        for line in lines:
            code = line.offered.code
            number = self.fields[f"number_{code}"] = forms.IntegerField(
                label=_("{award}, number").format(award=line.words), required=False, min_value=1, max_value=999_999,
                initial=line.entry.number if line.entry else None,
                widget=forms.NumberInput(attrs={"class": "short", "inputmode": "numeric"}),
            )  # fmt: skip
            withheld = self.fields[f"withheld_{code}"] = forms.BooleanField(
                label=_("{award}, withheld").format(award=line.words), required=False, initial=line.state == "withheld"
            )
            for field in (number, withheld):
                field.widget.attrs["aria-label"] = field.label

    def lines(self) -> list[tuple[Line, Any, Any]]:
        codes = [(line, line.offered.code) for line in self.awards]
        return [(line, self[f"number_{code}"], self[f"withheld_{code}"]) for line, code in codes]

    def clean(self) -> dict[str, Any]:
        data = super().clean() or {}
        for line in self.awards:
            code = line.offered.code
            if data.get(f"number_{code}") and data.get(f"withheld_{code}"):
                self.add_error(f"number_{code}", _("Either a dog has it or it is withheld: take one of the two away."))
        return data

    def decided(self) -> dict[str, int | bool | None]:
        data = self.cleaned_data
        codes = [line.offered.code for line in self.awards]
        return {code: False if data[f"withheld_{code}"] else data[f"number_{code}"] for code in codes}


class RecordForm(PlacesForm):
    is_signed = forms.BooleanField(
        label=gettext_lazy("The judge has signed the paper"), required=False,
        help_text=gettext_lazy("Tick it when the paper with the judge's signature lies before you."),
    )  # fmt: skip

    def __init__(self, *args: Any, stand: Stands, **kwargs: Any) -> None:
        super().__init__(*args, stand=stand, **kwargs)
        self.fields["is_signed"].initial = stand.state == "signed"
        self.fields["absent"] = forms.TypedMultipleChoiceField(
            label=gettext_lazy("Did not come"), required=False, coerce=int, widget=forms.CheckboxSelectMultiple,
            choices=[(one.entry.number, f"{one.entry.number} {one.entry.dog.name}") for one in stand.competing],
            initial=[one.entry.number for one in stand.competing if one.is_absent],
        )  # fmt: skip

    def told(self) -> dict[str, Any]:
        data = self.cleaned_data
        return {"places": self.places(), "absent": data["absent"], "is_signed": data["is_signed"]}


class CorrectFinalForm(PlacesForm):
    why = forms.CharField(
        label=gettext_lazy("Why it is corrected"), help_text=gettext_lazy("Shows beside the result."), max_length=300
    )


class AwardCorrectionForm(forms.Form):
    code = forms.ChoiceField(label=gettext_lazy("Award"))
    number = forms.IntegerField(
        label=gettext_lazy("Number of the dog that has it"), required=False, min_value=1, max_value=999_999,
        help_text=gettext_lazy("Leave it empty where nobody has it any more."),
    )  # fmt: skip
    why = forms.CharField(
        label=gettext_lazy("Why it is corrected"), help_text=gettext_lazy("Shows beside the award."), max_length=300
    )

    def __init__(self, *args: Any, awards: list[tuple[str, str]], **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["code"].choices = awards


class CancelForm(forms.Form):
    number = forms.IntegerField(label=gettext_lazy("Number of the dog"), min_value=1, max_value=999_999)
    why = forms.CharField(
        label=gettext_lazy("Why its awards are cancelled"), help_text=gettext_lazy("Shows beside them."), max_length=300
    )
