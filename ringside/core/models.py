"""The audit: who changed what, when, and why."""

from django.conf import settings
from django.db import models

from ringside.core import doings

LONGEST = 200


class AuditLine(models.Model):
    """One change that matters. `scope` is "show:ID" or "site"; `about` names the thing, as in "entry:12"."""

    scope = models.CharField(max_length=40, db_index=True)
    at = models.DateTimeField(auto_now_add=True)
    who = models.ForeignKey(settings.AUTH_USER_MODEL, null=True, on_delete=models.SET_NULL, related_name="+")
    doing = models.CharField(max_length=60)
    about = models.CharField(max_length=80, blank=True)
    detail = models.JSONField(default=dict, blank=True)

    @property
    def words(self) -> str:
        """What was done, in the reader's words."""
        return doings.said(self.doing)

    @property
    def about_words(self) -> str:
        return doings.about_said(self.about)

    @property
    def details(self) -> list[tuple[str, str]]:
        """Each detail that says anything, in words: lists with commas, the longest shortened."""
        told = {name: value for name, value in self.detail.items() if value not in (None, "")}
        return [(doings.said(name), _shortened(doings.value_said(name, value))) for name, value in told.items()]

    def __str__(self) -> str:
        return f"{self.at:%Y-%m-%d %H:%M} {self.doing} {self.about}"


def _shortened(text: str) -> str:
    return text if len(text) <= LONGEST else f"{text[:LONGEST]}…"
