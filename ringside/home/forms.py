"""What an owner or a claimant types."""

from django import forms
from django.utils.translation import gettext_lazy as _

from ringside.home.models import CorrectionRequest, Reader


class AskForm(forms.ModelForm):  # type: ignore[type-arg]
    class Meta:
        model = CorrectionRequest
        fields = ("kind", "text")
        widgets = {"text": forms.Textarea(attrs={"rows": 4, "maxlength": 1000})}


class ReaderForm(forms.Form):
    email = forms.EmailField(
        label=_("E-mail address"), max_length=254, help_text=_("The one with which this person signs in here.")
    )
    kind = forms.ChoiceField(label=_("Who it is"), choices=Reader.Kind.choices)


class ClaimForm(forms.Form):
    number = forms.IntegerField(label=_("Number on the card"), min_value=1, max_value=999_999)
    code = forms.CharField(
        label=_("Claim code"), max_length=20, help_text=_("Eight letters and digits on the strip under the number.")
    )
    email = forms.EmailField(label=_("Your e-mail address"), max_length=254)


class ShowFileForm(forms.Form):
    file = forms.FileField(
        label=_("The show's file"), help_text=_("A ZIP file from “Take the whole show out” elsewhere.")
    )
