"""A long print: what it prints, how far it is, and the file it becomes."""

from django.db import models
from django.utils.translation import gettext_lazy as _

from ringside.people.models import Account, languages
from ringside.shows.models import Show


class PaperRun(models.Model):
    """All published critiques of a show in one language, printed piece by piece while its page is open.

    `critiques` are the ids in catalogue order; `site` is the address that printed codes lead to. `busy_until` is set
    while a piece is being printed: two windows of one run do not print the same piece.
    """

    class Kind(models.TextChoices):
        BOOK = "book", _("one file")
        ZIP = "zip", _("a file for each dog, zipped")

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="paper_runs")
    kind = models.CharField(max_length=4, choices=Kind.choices)
    language = models.CharField(max_length=2, choices=languages)
    size = models.CharField(max_length=8, default="A4")
    site = models.CharField(max_length=200)
    critiques = models.JSONField(default=list)
    done = models.PositiveIntegerField(default=0)
    busy_until = models.DateTimeField(null=True, blank=True)
    file = models.FileField(upload_to="papers/", blank=True)
    started_by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    started_at = models.DateTimeField(auto_now_add=True)

    def __str__(self) -> str:
        return f"critiques of {self.show} ({self.language})"

    @property
    def total(self) -> int:
        return len(self.critiques)

    @property
    def suffix(self) -> str:
        return "pdf" if self.kind == self.Kind.BOOK else "zip"

    @property
    def is_ready(self) -> bool:
        return bool(self.file)
