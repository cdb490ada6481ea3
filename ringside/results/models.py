"""Results: what the judge signed, as rows; and what has been published."""

from django.db import models

from ringside.entries.models import Entry
from ringside.people.models import Account
from ringside.shows.models import Show, ShowClass


class Placing(models.Model):
    """One dog's result in one class, taken from the signed class card."""

    show_class = models.ForeignKey(ShowClass, on_delete=models.CASCADE, related_name="placings")
    entry = models.OneToOneField(Entry, on_delete=models.PROTECT, related_name="placing")
    presence = models.CharField(max_length=20, default="present")
    grade = models.CharField(max_length=40, blank=True)
    reason = models.TextField(blank=True)
    place = models.PositiveSmallIntegerField(null=True, blank=True)

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["show_class", "place"], name="place_once"),
            models.CheckConstraint(
                condition=models.Q(place__isnull=True) | models.Q(place__gte=1), name="place_from_1"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.entry}: {self.place or self.grade or self.presence}"


class Publication(models.Model):
    """A class whose results may be seen by exhibitors and the public."""

    show_class = models.OneToOneField(ShowClass, on_delete=models.CASCADE, related_name="publication")
    at = models.DateTimeField(auto_now_add=True)
    by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")

    def __str__(self) -> str:
        return f"{self.show_class} published"


class Critique(models.Model):
    """A signed critique, frozen in one language as it was signed; `fingerprint` is of its content, not of any person.

    `paper` holds what the printed page shows (marks, words, grade), so that later changes of data do not alter it.
    """

    entry = models.ForeignKey(Entry, on_delete=models.PROTECT, related_name="critiques")
    language = models.CharField(max_length=2)
    sentences = models.JSONField(default=list)
    paper = models.JSONField(default=dict)
    fingerprint = models.CharField(max_length=64)
    signed_at = models.DateTimeField()

    class Meta:
        constraints = [models.UniqueConstraint(fields=["entry", "language"], name="critique_once_a_language")]

    def __str__(self) -> str:
        return f"{self.entry} ({self.language})"


class DayChange(models.Model):
    """What was changed about an entry on the day, and why: moved, withdrawn, added at the ring.

    `before` and `after` name the class; `reason` is a code of the rules' reasons, or empty where `note` says it.
    """

    class Kind(models.TextChoices):
        MOVED = "moved", "moved to another class"
        WITHDRAWN = "withdrawn", "withdrawn"
        ADDED = "added", "added at the ring"

    entry = models.ForeignKey(Entry, on_delete=models.CASCADE, related_name="day_changes")
    kind = models.CharField(max_length=12, choices=Kind.choices)
    reason = models.CharField(max_length=40, blank=True)
    note = models.CharField(max_length=300, blank=True)
    before = models.CharField(max_length=120, blank=True)
    after = models.CharField(max_length=120, blank=True)
    by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    at = models.DateTimeField(auto_now_add=True)

    def __str__(self) -> str:
        return f"{self.entry}: {self.kind}"


class Report(models.Model):
    """A protest, an incident or a bite, as it was told to the office. For the owner of the show and the secretary."""

    class Kind(models.TextChoices):
        PROTEST = "protest", "protest"
        INCIDENT = "incident", "incident"
        BITE = "bite", "bite"

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="reports")
    entry = models.ForeignKey(Entry, null=True, blank=True, on_delete=models.PROTECT, related_name="reports")
    kind = models.CharField(max_length=12, choices=Kind.choices)
    text = models.TextField(max_length=5000)
    by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    at = models.DateTimeField(auto_now_add=True)

    def __str__(self) -> str:
        return f"{self.kind} at {self.show}"


class Correction(models.Model):
    """A change to a published result: what it was, what it is, who changed it and why. Never changed, never deleted."""

    entry = models.ForeignKey(Entry, on_delete=models.PROTECT, related_name="corrections")
    why = models.CharField(max_length=300)
    before = models.JSONField(default=dict)
    after = models.JSONField(default=dict)
    by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    at = models.DateTimeField(auto_now_add=True)

    def __str__(self) -> str:
        return f"{self.entry} corrected"
