"""Entries, and the files they come in with."""

from django.db import models

from ringside.dogs.models import Dog
from ringside.people.models import Account
from ringside.shows.models import Show, ShowClass


class Entry(models.Model):
    class State(models.TextChoices):
        ENTERED = "entered", "entered"
        WITHDRAWN = "withdrawn", "withdrawn"

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="entries")
    show_class = models.ForeignKey(ShowClass, on_delete=models.PROTECT, related_name="entries")
    dog = models.ForeignKey(Dog, on_delete=models.PROTECT, related_name="entries")
    number = models.PositiveIntegerField("catalogue number", null=True, blank=True)
    state = models.CharField(max_length=12, choices=State.choices, default=State.ENTERED)
    entered_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        verbose_name_plural = "entries"
        constraints = [
            models.UniqueConstraint(fields=["show", "number"], name="catalogue_number_once"),
            models.UniqueConstraint(
                fields=["show_class", "dog"],
                name="dog_once_in_class",
                violation_error_message="This dog is in this class already.",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.number or 'no number'} {self.dog}"


class EntryFile(models.Model):
    """A file of entries as it was understood: kept until all its lines are taken or set aside.

    `content` is the file itself, so that it can be read again another way; it is emptied when no line waits any more.
    `columns` says which column (from 0) holds which field. `checked_for` is the state of the show that the lines'
    findings speak of.
    """

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="entry_files")
    name = models.CharField(max_length=200)
    content = models.BinaryField(default=bytes, blank=True)
    digest = models.CharField(max_length=64)
    kind = models.CharField(max_length=8)
    encoding = models.CharField(max_length=20, blank=True)
    delimiter = models.CharField(max_length=2, blank=True)
    sheet = models.CharField(max_length=100, blank=True)
    other_sheets = models.JSONField(default=list, blank=True)
    date_style = models.CharField(max_length=12)
    date_certain = models.BooleanField(default=True)
    heading_line = models.PositiveIntegerField(default=1)
    headings = models.JSONField(default=list)
    columns = models.JSONField(default=dict)
    checked_for = models.CharField(max_length=200, blank=True)
    uploaded_by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    uploaded_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [models.UniqueConstraint(fields=["show", "digest"], name="file_once_in_show")]

    def __str__(self) -> str:
        return self.name


class EntryLine(models.Model):
    """One line of a file: its cells as read, the fields mended since, what is to be said of it, the entry it became."""

    class State(models.TextChoices):
        WAITING = "waiting", "waiting"
        TAKEN = "taken", "taken"
        ASIDE = "aside", "set aside"

    class Standing(models.TextChoices):
        GOOD = "good", "good"
        WARNED = "warned", "good, with a warning"
        REFUSED = "refused", "to be mended"

    file = models.ForeignKey(EntryFile, on_delete=models.CASCADE, related_name="lines")
    line = models.PositiveIntegerField()
    cells = models.JSONField(default=list)
    mended = models.JSONField(default=dict, blank=True)
    findings = models.JSONField(default=list, blank=True)
    standing = models.CharField(max_length=8, choices=Standing.choices, default=Standing.REFUSED)
    state = models.CharField(max_length=8, choices=State.choices, default=State.WAITING)
    entry = models.ForeignKey(Entry, null=True, blank=True, on_delete=models.SET_NULL, related_name="lines")

    class Meta:
        constraints = [models.UniqueConstraint(fields=["file", "line"], name="file_line_once")]
        indexes = [models.Index(fields=["file", "state", "standing", "line"], name="file_line_standing")]

    def __str__(self) -> str:
        return f"{self.file} line {self.line}"
