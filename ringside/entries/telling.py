"""Tells whoever sent an entry that waited what the secretary has decided, in the language of their letters."""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from django.core.mail import send_mail
from django.db import transaction

from ringside.core.tables import by_language
from ringside.entries.models import EntryRequest
from ringside.people.models import Language


def _letters() -> Mapping[str, Any]:
    return by_language(Path(__file__).with_name("letter_words"))


def tell_decision(request: EntryRequest, where: str) -> None:
    """Sends the letter once the decision is certain; a mail server that is down never undoes it.

    Nobody is written to about what the office has put aside itself.
    """
    if request.account is None:
        return
    words = _letters()[request.account.language or Language.EN]
    told: dict[str, Any] = {
        "dog": request.name, "show": request.show.name, "reason": request.reason, "where": where,
    }  # fmt: skip
    subject = " ".join(words[request.state].format(**told).split())
    body, address = words["body"].format(**told).strip(), request.account.email
    transaction.on_commit(lambda: send_mail(subject, body, None, [address]), robust=True)
