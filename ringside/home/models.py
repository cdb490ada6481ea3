"""What an owner hands on or asks for: shared critiques, readers, requests to correct a fact, claims of a dog."""

from django.db import models
from django.db.models.functions import Lower
from django.utils.translation import gettext_lazy as _

from ringside.dogs.models import Dog
from ringside.entries.models import Consent, Entry
from ringside.people.models import Account


class Share(models.Model):
    """A link under which anybody reads one dog's critique of one show, until an owner of the dog withdraws it.

    `consent` is who agreed to it, in which words.
    """

    entry = models.ForeignKey(Entry, on_delete=models.CASCADE, related_name="shares")
    token = models.CharField(max_length=43, unique=True)
    made_by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    made_at = models.DateTimeField(auto_now_add=True)
    withdrawn_at = models.DateTimeField(null=True, blank=True)
    consent = models.ForeignKey(Consent, null=True, blank=True, on_delete=models.SET_NULL, related_name="shares")

    def __str__(self) -> str:
        return f"{self.entry} shared"


class Reader(models.Model):
    """Somebody whom an owner lets read a dog's published critiques, signed in with this address.

    It counts as long as the owner who gave it owns the dog. `consent` is who agreed to it, in which words.
    """

    class Kind(models.TextChoices):
        BREEDER = "breeder", _("the breeder")
        CO_OWNER = "co-owner", _("a co-owner")
        OTHER = "other", _("somebody else")

    dog = models.ForeignKey(Dog, on_delete=models.CASCADE, related_name="readers")
    email = models.EmailField(max_length=254)
    kind = models.CharField(max_length=8, choices=Kind.choices)
    given_by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    given_at = models.DateTimeField(auto_now_add=True)
    withdrawn_at = models.DateTimeField(null=True, blank=True)
    consent = models.ForeignKey(Consent, null=True, blank=True, on_delete=models.SET_NULL, related_name="readers")

    class Meta:
        constraints = [
            models.UniqueConstraint(
                fields=["dog", "email", "given_by"], condition=models.Q(withdrawn_at=None), name="one_leave_in_force"
            ),
            models.CheckConstraint(condition=models.Q(email=Lower("email")), name="reader_email_is_lower_case"),
        ]

    def __str__(self) -> str:
        return f"{self.kind} reads {self.dog}"


class CorrectionRequest(models.Model):
    """What an owner says is wrong about a fact. The judge's opinion is nobody's to correct."""

    class Kind(models.TextChoices):
        NAME = "name", _("the dog's name")
        NUMBER = "number", _("the catalogue number")
        CLASS = "class", _("the class or the breed")
        PAPERS = "papers", _("date of birth, studbook or microchip number")
        OWNER = "owner", _("the owner's or breeder's name")
        RESULT = "result", _("the grade or place was written down wrongly")

    entry = models.ForeignKey(Entry, on_delete=models.CASCADE, related_name="correction_requests")
    kind = models.CharField(_("what is wrong"), max_length=8, choices=Kind.choices)
    text = models.TextField(_("how it should read"), max_length=1000)
    asked_by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    asked_at = models.DateTimeField(auto_now_add=True)
    answer = models.TextField(max_length=1000, blank=True)
    closed_at = models.DateTimeField(null=True, blank=True)
    closed_by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")

    def __str__(self) -> str:
        return f"{self.entry}: {self.kind}"


class ClaimCode(models.Model):
    """What the number card's claim code is made of: with the site's secret, so the database alone tells none."""

    entry = models.OneToOneField(Entry, on_delete=models.CASCADE, related_name="claim_code")
    salt = models.CharField(max_length=32)
    tries = models.PositiveIntegerField(default=0)
    used_at = models.DateTimeField(null=True, blank=True)
    used_by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")

    def __str__(self) -> str:
        return f"claim code of {self.entry}"
