"""The form of an address in the catalogue: the person's own, or what the office reads from a paper form."""

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from ringside.entries.consents.actions import LONGEST_ADDRESS
from ringside.people.models import Person


class AddressForm(forms.Form):
    person = forms.ModelChoiceField(queryset=Person.objects.none(), label=_("Owner"))
    address = forms.CharField(
        label=_("Address as the catalogue is to print it"),
        max_length=LONGEST_ADDRESS,
        widget=forms.Textarea(attrs={"rows": 3, "autocomplete": "street-address"}),
    )

    def __init__(self, *args: Any, people: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["person"].queryset = people
        self.fields["person"].empty_label = None


class OwnAddressForm(AddressForm):
    """One name of the person's own, so the form asks for none."""

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["person"].widget = forms.HiddenInput()


class PaperAddressForm(AddressForm):
    is_signed = forms.BooleanField(
        label=_("The owner has agreed to this on paper"),
        help_text=_("Tick it when the form with the owner's signature lies before you, and keep the form."),
    )
