"""What was written in the ring: every edit for ever, and the settled sheet as rows that can be queried."""

from django.db import models
from django.utils.translation import gettext_lazy as _

from ringside.entries.models import Entry
from ringside.people.models import Account, Person
from ringside.ring.rights import PAPER
from ringside.shows.models import Ring, ShowBreed, ShowClass, role_words
from scoring.sheet import LONGEST_FIELD


class Pairing(models.Model):
    """A one-time code that lets a tablet work in a ring, and what became of it. Only the code's digest is kept."""

    class Kind(models.TextChoices):
        JUDGE = "judge", _("judge")
        STEWARD = "steward", _("steward")
        WRITER = "writer", _("writer")

    ring = models.ForeignKey(Ring, on_delete=models.CASCADE, related_name="pairings")
    day = models.DateField()
    kind = models.CharField(max_length=8, choices=Kind.choices)
    code_digest = models.CharField(max_length=64, unique=True)
    made_by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    made_at = models.DateTimeField()
    used_at = models.DateTimeField(null=True)
    ends_at = models.DateTimeField(null=True)

    def __str__(self) -> str:
        return f"{self.ring} as {self.kind}"


class Edit(models.Model):
    """One change of one field, as it came from a device. Never changed, never deleted: edits are the audit trail.

    Only those taken in count. One is held until somebody takes it in or leaves it out; one that is refused is kept with
    its reason all the same, so that edits that name it need not wait for it. `judge` is who judged there when a
    signature came: a judge who takes over later has not signed it.
    """

    class State(models.TextChoices):
        TAKEN = "taken", "taken in"
        HELD = "held", "held"
        LEFT_OUT = "left-out", "left out"
        REFUSED = "refused", "refused"

    id = models.CharField(max_length=64, primary_key=True)
    ring = models.ForeignKey(Ring, on_delete=models.PROTECT, related_name="edits")
    sequence = models.PositiveBigIntegerField()
    # As long as an edit may name them, of a format that is not known here too.
    sheet = models.CharField(max_length=LONGEST_FIELD, db_index=True)
    field = models.CharField(max_length=LONGEST_FIELD)
    value = models.JSONField(null=True)
    replaces = models.JSONField(default=list)
    made_at = models.CharField(max_length=40, blank=True)
    device = models.CharField(max_length=64, blank=True)
    version = models.PositiveSmallIntegerField(default=1)
    digest = models.CharField(max_length=64)
    by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    pairing = models.ForeignKey(Pairing, null=True, on_delete=models.SET_NULL, related_name="edits")
    role = models.CharField(max_length=12, blank=True)
    judge = models.ForeignKey(Person, null=True, blank=True, on_delete=models.PROTECT, related_name="+")
    state = models.CharField(max_length=8, choices=State.choices, default=State.TAKEN)
    reason = models.CharField(max_length=200, blank=True)
    received_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [models.UniqueConstraint(fields=["ring", "sequence"], name="edit_sequence_once")]

    def __str__(self) -> str:
        return f"{self.sheet} {self.field}"

    @property
    def role_words(self) -> str:
        return str(_("typed from the judge's page")) if self.role == PAPER else role_words(self.role)


class Sheet(models.Model):
    """The settled state of one sheet: a dog's critique, a class card or a breed's awards; made from its edits.

    `fields` are the settled values by field; `signed` those that the standing signature covers, null when unsigned.
    """

    key = models.CharField(max_length=40, primary_key=True)
    ring = models.ForeignKey(Ring, on_delete=models.PROTECT, related_name="sheets")
    entry = models.OneToOneField(Entry, null=True, on_delete=models.PROTECT, related_name="sheet")
    show_class = models.OneToOneField(ShowClass, null=True, on_delete=models.PROTECT, related_name="card")
    show_breed = models.OneToOneField(ShowBreed, null=True, on_delete=models.PROTECT, related_name="awards_card")
    fields = models.JSONField(default=dict)
    disputed = models.JSONField(default=list)
    incomplete = models.JSONField(default=list)
    held = models.JSONField(default=list)
    signed = models.JSONField(null=True)
    signed_at = models.DateTimeField(null=True)

    def __str__(self) -> str:
        return self.key


class Mark(models.Model):
    """One settled mark, -3..+3: a row, so that marks can be asked for across a breed."""

    sheet = models.ForeignKey(Sheet, on_delete=models.CASCADE, related_name="marks")
    point = models.CharField(max_length=40)
    mark = models.SmallIntegerField()

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["sheet", "point"], name="mark_once"),
            models.CheckConstraint(condition=models.Q(mark__range=(-3, 3)), name="mark_in_range"),
        ]
        indexes = [models.Index(fields=["point", "mark"], name="mark_by_point")]

    def __str__(self) -> str:
        return f"{self.point} {self.mark:+d}"


class Tablet(models.Model):
    """A device that has spoken with the server: what it says it still holds, and whether it was declared lost."""

    ring = models.ForeignKey(Ring, on_delete=models.CASCADE, related_name="tablets")
    device = models.CharField(max_length=64)
    pairing = models.ForeignKey(Pairing, null=True, on_delete=models.SET_NULL, related_name="tablets")
    role = models.CharField(max_length=12, blank=True)
    seen_at = models.DateTimeField()
    unsent = models.PositiveIntegerField(default=0)
    lost_at = models.DateTimeField(null=True)
    lost_reason = models.CharField(max_length=200, blank=True)

    class Meta:
        constraints = [models.UniqueConstraint(fields=["ring", "device"], name="tablet_once_in_a_ring")]

    def __str__(self) -> str:
        return f"{self.role} {self.device[:6]}"

    @property
    def role_words(self) -> str:
        return role_words(self.role)
