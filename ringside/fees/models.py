"""A show's fee table and account, who is a member, fees that differ, what was paid, and the invoices."""

from decimal import Decimal

from django.db import models
from django.utils.translation import gettext_lazy as _

from ringside.entries.models import Entry
from ringside.people.models import Account, Person
from ringside.shows.models import Show


class Terms(models.Model):
    """How a show charges: its currency, whose members pay another fee, who sends the invoices, where it is paid.

    `last_invoice` is the number of the last invoice; numbers run from 1 without gaps.
    """

    show = models.OneToOneField(Show, on_delete=models.CASCADE, related_name="fee_terms")
    currency = models.CharField(max_length=3, default="EUR")
    club = models.CharField(max_length=120, blank=True)
    issuer = models.TextField(max_length=400, blank=True)
    account_holder = models.CharField(max_length=70, blank=True)
    iban = models.CharField(max_length=34, blank=True)
    bic = models.CharField(max_length=11, blank=True)
    pay_by = models.DateField(null=True, blank=True)
    note = models.CharField(max_length=400, blank=True)
    last_invoice = models.PositiveIntegerField(default=0)

    class Meta:
        verbose_name_plural = "terms"

    def __str__(self) -> str:
        return f"{self.show}: {self.currency}"


class FeeLine(models.Model):
    """One line of the table. What is left empty is not asked; both days belong to the line."""

    class Turn(models.TextChoices):
        EACH = "first-class", _("the first class of each dog")
        FIRST = "first-dog", _("an exhibitor's first dog")
        FURTHER = "further-dog", _("each further dog")
        AGAIN = "further-class", _("a further class of the same dog")

    class Membership(models.TextChoices):
        MEMBER = "member", _("members")
        OTHER = "other", _("who is not a member")

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="fee_lines")
    name = models.CharField(max_length=80)
    classes = models.JSONField(default=list, blank=True)
    turn = models.CharField(max_length=14, choices=Turn.choices, blank=True)
    membership = models.CharField(max_length=8, choices=Membership.choices, blank=True)
    first_day = models.DateField(null=True, blank=True)
    last_day = models.DateField(null=True, blank=True)
    amount = models.DecimalField(max_digits=10, decimal_places=2)

    class Meta:
        constraints = [
            models.UniqueConstraint(
                fields=["show", "name"],
                name="fee_line_name_once",
                violation_error_message=_("There is a fee of this name already."),
            ),
            models.CheckConstraint(condition=models.Q(amount__gte=0), name="fee_not_below_zero"),
            models.CheckConstraint(
                condition=models.Q(last_day__gte=models.F("first_day"))
                | models.Q(first_day__isnull=True)
                | models.Q(last_day__isnull=True),
                name="fee_ends_after_it_begins",
                violation_error_message=_("The last day lies before the first."),
            ),
        ]

    def __str__(self) -> str:
        return self.name


class Membership(models.Model):
    """The person counts as a member at this show."""

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="fee_members")
    person = models.ForeignKey(Person, on_delete=models.CASCADE, related_name="+")

    class Meta:
        constraints = [models.UniqueConstraint(fields=["show", "person"], name="member_once_in_show")]

    def __str__(self) -> str:
        return f"{self.person} at {self.show}"


class Why(models.TextChoices):
    WITHDRAWN = "withdrawn", _("withdrawn in time")
    JUDGE = "judge", _("judge replaced")
    CANCELLED = "cancelled", _("show cancelled")
    OTHER = "other", _("another reason")


class FeeChange(models.Model):
    """An entry whose fee differs from the table: another amount, or another day on which it counts as entered."""

    entry = models.OneToOneField(Entry, on_delete=models.CASCADE, related_name="fee_change")
    amount = models.DecimalField(max_digits=10, decimal_places=2, null=True, blank=True)
    entered_on = models.DateField(null=True, blank=True)
    why = models.CharField(max_length=12, choices=Why.choices)
    note = models.CharField(max_length=300, blank=True)
    by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=models.Q(amount__isnull=False) | models.Q(entered_on__isnull=False),
                name="fee_change_says_what",
            ),
            models.CheckConstraint(
                condition=models.Q(amount__gte=0) | models.Q(amount__isnull=True), name="changed_fee_not_below_zero"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.entry}: {self.amount}"


class Payment(models.Model):
    """Money that came in, or went back; never deleted: what was typed wrongly is struck out and stays to be seen."""

    class Kind(models.TextChoices):
        RECEIVED = "received", _("received")
        REFUNDED = "refunded", _("paid back")

    class How(models.TextChoices):
        TRANSFER = "transfer", _("bank transfer")
        CASH = "cash", _("cash")
        CARD = "card", _("card")
        OTHER = "other", _("another way")

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="payments")
    person = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="payments")
    kind = models.CharField(max_length=8, choices=Kind.choices)
    amount = models.DecimalField(max_digits=10, decimal_places=2)
    day = models.DateField()
    how = models.CharField(max_length=8, choices=How.choices)
    reference = models.CharField(max_length=140, blank=True)
    why = models.CharField(max_length=12, choices=Why.choices, blank=True)
    note = models.CharField(max_length=300, blank=True)
    by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    at = models.DateTimeField(auto_now_add=True)
    struck_at = models.DateTimeField(null=True, blank=True)
    struck_by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    struck_why = models.CharField(max_length=300, blank=True)

    class Meta:
        constraints = [models.CheckConstraint(condition=models.Q(amount__gt=0), name="payment_above_zero")]
        indexes = [models.Index(fields=["show", "person"], name="payment_by_person")]

    @property
    def signed(self) -> Decimal:
        """What it adds to what is paid."""
        return self.amount if self.kind == self.Kind.RECEIVED else -self.amount

    @property
    def words(self) -> str:
        """Its reference, why it went back, and the note, as far as there are any."""
        return ", ".join(filter(None, (self.reference, str(self.get_why_display()), self.note)))

    def __str__(self) -> str:
        return f"{self.get_kind_display()} {self.amount} {self.person}"


class Invoice(models.Model):
    """An invoice as it was issued: nothing in it changes; where the account has changed, the next one replaces it.

    `name` is the exhibitor's as it was. `lines`: for each entry {"number", "dog", "class", "withdrawn", "fee",
    "amount"}: the class as its code, an empty fee where the office agreed on the amount, the amount as text.
    `pay_to`: issuer, account_holder, iban, bic, pay_by and note as the show's terms had them.
    """

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="invoices")
    number = models.PositiveIntegerField()
    person = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="invoices")
    name = models.CharField(max_length=120)
    issued_on = models.DateField()
    by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    currency = models.CharField(max_length=3)
    lines = models.JSONField()
    total = models.DecimalField(max_digits=12, decimal_places=2)
    paid = models.DecimalField(max_digits=12, decimal_places=2)
    pay_to = models.JSONField()
    replaces = models.OneToOneField(
        "self", null=True, blank=True, on_delete=models.RESTRICT, related_name="replaced_by"
    )

    class Meta:
        constraints = [models.UniqueConstraint(fields=["show", "number"], name="invoice_number_once")]

    @property
    def still_owed(self) -> Decimal:
        return max(self.total - self.paid, Decimal(0))

    def __str__(self) -> str:
        return f"Invoice {self.number}, {self.show}"
