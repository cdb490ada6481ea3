"""What an exhibitor was told before the show, and whether the e-mail went out."""

from django.db import models
from django.utils.translation import gettext_lazy as _

from ringside.people.models import Account
from ringside.shows.models import Show


class Notice(models.Model):
    """The e-mail to one exhibitor of one show. It waits as a row until it has gone out, so that nothing is lost.

    `told` is what the last one that went out said of each dog: number, day, ring, time, as texts. `busy_until` is set
    while it is being sent: two windows do not send the same one. `problem` is set where it could not be sent.
    """

    class State(models.TextChoices):
        WAITING = "waiting", _("waits to be sent")
        SENT = "sent", _("sent")
        FAILED = "failed", _("not sent")

    class Problem(models.TextChoices):
        SERVER = "server", _("the mail server did not answer")
        ADDRESS = "address", _("the mail server refused this letter or its address")

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="notices")
    account = models.ForeignKey(Account, on_delete=models.CASCADE, related_name="notices")
    told = models.JSONField(default=list)
    state = models.CharField(max_length=8, choices=State.choices, default=State.WAITING)
    problem = models.CharField(max_length=8, choices=Problem.choices, blank=True)
    sent_at = models.DateTimeField(null=True, blank=True)
    busy_until = models.DateTimeField(null=True, blank=True)

    class Meta:
        constraints = [models.UniqueConstraint(fields=["show", "account"], name="notice_once_an_exhibitor")]

    def __str__(self) -> str:
        return f"{self.account} about {self.show}: {self.state}"
