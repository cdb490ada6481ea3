"""Telling the exhibitors: the letters are put in line, sent piece by piece, and stand there until they have gone out.

No process works in the background: sending goes on while somebody looks at the page, rests when they leave, and is
taken up where it was. A letter whose sending is cut off between server and row goes out twice rather than never.
"""

from collections.abc import Iterator
from datetime import datetime, timedelta
from email.encoders import encode_base64
from email.mime.base import MIMEBase
from smtplib import SMTPDataError, SMTPRecipientsRefused
from typing import Any

from django.core.mail import EmailMessage, get_connection
from django.db import transaction
from django.db.models import Q
from django.urls import reverse
from django.utils import timezone, translation

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.notices import wording
from ringside.notices.models import Notice
from ringside.notices.queries import Recipient, dogs_of, lacking, recipients_of, standings_of
from ringside.people.models import Account
from ringside.shows.access import require
from ringside.shows.models import Show

AT_ONCE = 10
BUSY = timedelta(minutes=5)
State, Problem = Notice.State, Notice.Problem
# What a server raises about one letter; a header that cannot be sent is a ValueError. Anything else it raises is an
# OSError and concerns every letter.
OF_ONE_LETTER = (SMTPRecipientsRefused, SMTPDataError, ValueError)


@transaction.atomic
def put_in_line(*, who: Account, show: Show, even_incomplete: bool = False) -> int:
    """Puts a letter in line for everybody not told yet, not reached, or told what has changed since; how many.

    NotNow where a dog has no number, or where day, ring or time are missing and `even_incomplete` does not say that
    the letters go out all the same.
    """
    require(who, show, "send-notices")
    Show.objects.select_for_update().get(pk=show.pk)
    dogs = dogs_of(show)
    missing = dict(lacking(show, dogs))
    if "number" in missing:
        raise NotNow("Give every dog its catalogue number first.")
    if missing and not even_incomplete:
        raise NotNow("Some dogs have no day, ring or time yet: plan them, or say that the letters go out all the same.")
    standings, _ = standings_of(show, dogs)
    due = [one.recipient.account for one in standings if one.is_due]
    if not due and _waiting(show).exists():
        raise NotNow("The letters are being sent: wait until none is in line any more.")
    if not due:
        raise NotNow("Everybody with an address has been told, and nothing has changed since.")
    for account in due:
        told: dict[str, Any] = {"state": State.WAITING, "problem": "", "busy_until": None}
        Notice.objects.update_or_create(show=show, account=account, defaults=told)
    record(who=who, doing="send-notices", show_id=show.pk, count=len(due))
    return len(due)


def advance(*, who: Account, show: Show, site: str) -> int:
    """Sends the next letters in line; how many still wait. `site` is the address of its front page."""
    require(who, show, "send-notices")
    mine = list(_claimed(show, timezone.now()))
    if mine:
        _send(show, mine, site)
        if not _waiting(show).exists():
            _record_end(who, show)
    return _waiting(show).count()


def _waiting(show: Show) -> Any:
    return Notice.objects.filter(show=show, state=State.WAITING)


def _claimed(show: Show, now: datetime) -> Iterator[Notice]:
    is_free = Q(busy_until=None) | Q(busy_until__lt=now)
    for notice in _waiting(show).filter(is_free).select_related("account").order_by("id")[:AT_ONCE]:
        if _waiting(show).filter(is_free, pk=notice.pk).update(busy_until=now + BUSY):
            yield notice


def _send(show: Show, notices: list[Notice], site: str) -> None:
    """Sends these; where the server does not answer, none that waits is tried on it any more."""
    reached, _ = recipients_of(show, dogs_of(show, [notice.account_id for notice in notices]))
    recipients = {one.account.pk: one for one in reached if one.account}
    connection = get_connection()
    try:
        connection.open()
        for notice in notices:
            _send_one(show, notice, recipients.get(notice.account_id), site, connection)
        connection.close()
    except OSError:
        _waiting(show).update(state=State.FAILED, problem=Problem.SERVER, busy_until=None)


def _send_one(show: Show, notice: Notice, recipient: Recipient | None, site: str, connection: Any) -> None:
    """Raises OSError where the server is away."""
    if recipient is None:
        # Every dog of theirs was withdrawn since.
        notice.delete()
        return
    told: dict[str, Any] = {"busy_until": None}
    letter = letter_to(show, recipient, site)
    letter.connection = connection
    try:
        letter.send()
        told |= {"state": State.SENT, "problem": "", "told": recipient.facts, "sent_at": timezone.now()}
    except OF_ONE_LETTER:
        told |= {"state": State.FAILED, "problem": Problem.ADDRESS}
    Notice.objects.filter(pk=notice.pk).update(**told)


def letter_to(show: Show, recipient: Recipient, site: str) -> EmailMessage:
    """The letter with its calendar file, in the language of the account."""
    assert recipient.account
    with translation.override(recipient.account.language or "en"):
        text = wording.body(show, recipient, site.rstrip("/") + reverse("home:mine"))
        letter = EmailMessage(wording.subject(show), text, to=[recipient.account.email])
        letter.attach(_as_file(wording.calendar(show, recipient, timezone.now()), f"{show.slug}.ics"))
    return letter


def _as_file(events: str, name: str) -> MIMEBase:
    """Encoded, so that no server on the way changes a line end."""
    part = MIMEBase("text", "calendar", charset="utf-8")
    part.set_payload(events.encode())
    encode_base64(part)
    part.add_header("Content-Disposition", "attachment", filename=name)
    return part


def _record_end(who: Account, show: Show) -> None:
    """How it went, with accounts by number so that addresses can be erased."""
    found = Notice.objects.filter(show=show)
    failed = list(found.filter(state=State.FAILED).order_by("account_id").values_list("account_id", flat=True))
    sent = found.filter(state=State.SENT).count()
    record(who=who, doing="notices-sent", show_id=show.pk, sent=sent, failed=failed)
