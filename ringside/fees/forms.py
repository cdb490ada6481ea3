"""The forms of a show's money: terms, one line of the fee table, a fee that differs, a payment."""

from datetime import date
from decimal import Decimal
from typing import Any

from django import forms
from django.utils.text import format_lazy
from django.utils.translation import gettext_lazy as _

from ringside.core.sentences import sentence
from ringside.fees.models import FeeChange, FeeLine, Payment, Terms, Why
from ringside.fees.money import digits, plain
from ringside.shows.books import class_names
from ringside.shows.forms import DateInput
from ringside.shows.models import Show
from scoring.findings import Finding
from scoring.iban import check_bic, check_iban, joined, needs_bic

MOST = Decimal(1_000_000)


def _sound(value: str, findings: tuple[Finding, ...]) -> str:
    if findings:
        raise forms.ValidationError([sentence(finding) for finding in findings])
    return value


class AmountField(forms.DecimalField):
    """An amount in a currency: no more digits after the point than it has; a comma is taken as the point."""

    def __init__(self, currency: str, **kwargs: Any) -> None:
        self.currency = currency
        places = digits().get(currency, 2)
        super().__init__(max_value=MOST, decimal_places=places, widget=forms.TextInput(), **kwargs)
        self.widget.attrs.update({"inputmode": "decimal", "class": "short"})

    def to_python(self, value: Any) -> Decimal | None:
        return super().to_python(value.replace(",", ".") if isinstance(value, str) else value)

    def prepare_value(self, value: Any) -> Any:
        """An amount that is kept, with as many digits as may be sent back; what was typed, as it was typed."""
        return plain(value, self.currency) if isinstance(value, Decimal) else value


class TermsForm(forms.ModelForm):  # type: ignore[type-arg]
    currency = forms.ChoiceField(label=_("Currency"), choices=lambda: [(code, code) for code in digits()])
    iban = forms.CharField(label=_("Account number (IBAN)"), max_length=60, required=False)
    bic = forms.CharField(
        label=_("Bank's code (BIC)"), max_length=20, required=False, help_text=_("Only where the bank asks for it.")
    )

    class Meta:
        model = Terms
        fields = ["currency", "club", "issuer", "account_holder", "iban", "bic", "pay_by", "note"]
        labels = {
            "account_holder": _("Account holder"), "club": _("Club whose members pay another fee"),
            "issuer": _("Who sends the invoice, with address"),
            "pay_by": _("To be paid by"), "note": _("A sentence on every invoice"),
        }  # fmt: skip
        help_texts = {
            "note": _("Another way to pay, for example: the digits of a national account, or cash at the show."),
        }
        widgets = {"pay_by": DateInput(), "issuer": forms.Textarea(attrs={"rows": 3})}

    def clean_iban(self) -> str:
        typed = joined(self.cleaned_data["iban"])
        return _sound(typed, check_iban(typed)) if typed else ""

    def clean_bic(self) -> str:
        typed = joined(self.cleaned_data["bic"])
        return _sound(typed, check_bic(typed)) if typed else ""

    def clean(self) -> dict[str, Any]:
        data = super().clean() or {}
        if data.get("iban") and not data.get("account_holder"):
            self.add_error("account_holder", _("Write whose account this is: banks compare the name."))
        if data.get("currency") == "EUR" and needs_bic(data.get("iban", "")) and not data.get("bic"):
            self.add_error("bic", _("Write the bank's code too: euro to a bank of this country need it."))
        return data


class LineForm(forms.ModelForm):  # type: ignore[type-arg]
    classes = forms.MultipleChoiceField(
        label=_("Classes"),
        required=False,
        widget=forms.CheckboxSelectMultiple,
        help_text=_("None ticked: every class."),
    )

    class Meta:
        model = FeeLine
        fields = ["name", "amount", "turn", "membership", "first_day", "last_day", "classes"]
        labels = {
            "name": _("What it is called on invoices"), "turn": _("For which entry"), "membership": _("For whom"),
            "first_day": _("Entered from"), "last_day": _("Entered until"),
        }  # fmt: skip
        widgets = {"first_day": DateInput(), "last_day": DateInput()}

    def __init__(self, *args: Any, show: Show, currency: str, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.show = show
        rules = class_names(show)
        own = [(code, code) for code in self.instance.classes if code not in rules]
        classes, turn, membership = (self.fields[name] for name in ("classes", "turn", "membership"))
        classes.choices = [*rules.items(), *own]  # type: ignore[attr-defined]
        turn.choices = [("", _("every entry")), *FeeLine.Turn.choices]  # type: ignore[attr-defined]
        membership.choices = [("", _("everybody")), *FeeLine.Membership.choices]  # type: ignore[attr-defined]
        self.fields["amount"] = AmountField(
            currency, label=format_lazy(_("Amount in {currency}"), currency=currency), min_value=0
        )

    def clean_name(self) -> str:
        name: str = self.cleaned_data["name"]
        if FeeLine.objects.filter(show=self.show, name=name).exclude(pk=self.instance.pk).exists():
            raise forms.ValidationError(_("There is a fee of this name already. Give each its own name."))
        return name

    def clean(self) -> dict[str, Any]:
        data = super().clean() or {}
        first, last = data.get("first_day"), data.get("last_day")
        if first and last and last < first:
            self.add_error("last_day", _("The last day lies before the first."))
        return data


class ChangeForm(forms.ModelForm):  # type: ignore[type-arg]
    """What an entry costs instead, or the day on which it counts as entered."""

    class Meta:
        model = FeeChange
        fields = ["amount", "entered_on", "why", "note"]
        labels = {"entered_on": _("Counts as entered on"), "why": _("Why"), "note": _("In words")}
        widgets = {"entered_on": DateInput()}

    def __init__(self, *args: Any, currency: str, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["amount"] = AmountField(
            currency, label=format_lazy(_("It costs, in {currency}"), currency=currency), min_value=0, required=False
        )

    def clean(self) -> dict[str, Any]:
        data = super().clean() or {}
        if data.get("why") == Why.OTHER and not data.get("note"):
            self.add_error("note", _("Write the reason down: it is kept beside the entry."))
        if not self.errors and data.get("amount") is None and not data.get("entered_on"):
            self.add_error("amount", _("Write an amount here, or a day below."))
        return data


class PaymentForm(forms.Form):
    kind = forms.ChoiceField(label=_("Money"), choices=Payment.Kind.choices)
    day = forms.DateField(label=_("Day"), widget=DateInput())
    how = forms.ChoiceField(label=_("How"), choices=Payment.How.choices)
    why = forms.ChoiceField(
        label=_("Why it goes back"), choices=[("", _("(only for a refund)")), *Why.choices], required=False
    )
    reference = forms.CharField(label=_("Reference of the bank or receipt"), max_length=140, required=False)
    note = forms.CharField(label=_("Note"), max_length=300, required=False)
    field_order = ("kind", "amount", "day", "how", "why", "reference", "note")

    def __init__(self, *args: Any, currency: str, today: date, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.today = today
        least = Decimal(1).scaleb(-digits().get(currency, 2))
        self.fields["amount"] = AmountField(
            currency, label=format_lazy(_("Amount in {currency}"), currency=currency), min_value=least
        )
        self.order_fields(self.field_order)

    def clean_day(self) -> date:
        day: date = self.cleaned_data["day"]
        if day > self.today:
            raise forms.ValidationError(_("This day is still to come: write the day on which the money moved."))
        return day

    def clean(self) -> dict[str, Any]:
        data = super().clean() or {}
        if data.get("kind") == Payment.Kind.REFUNDED and not data.get("why"):
            self.add_error("why", _("Choose why the money goes back."))
        if data.get("why") == Why.OTHER and data.get("kind") == Payment.Kind.REFUNDED and not data.get("note"):
            self.add_error("note", _("Write the reason down: it is kept beside the refund."))
        return data
