"""Letters to owners when results and critiques of their dogs are published: one an account, in its language.

A letter that cannot be sent never stops publishing: it is written down in the audit, and the secretary sends it again.
"""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from smtplib import SMTPException
from typing import Any

from django.core.mail import EmailMessage, get_connection
from django.db import transaction
from django.urls import reverse

from ringside.core import audit
from ringside.core.models import AuditLine
from ringside.core.tables import by_language
from ringside.entries.models import Entry
from ringside.people.models import Account
from ringside.results.models import Critique, Placing
from ringside.results.wording import result_in
from ringside.shows.access import require
from ringside.shows.models import ShowClass

DOING = "send-letters"
# What a server that is away, refuses or hangs up raises; a header that cannot be sent is a ValueError.
FAILURES = (OSError, SMTPException, ValueError)


def words() -> Mapping[str, Any]:
    return by_language(Path(__file__).with_name("letter_words"))


def tell_owners(*, by: Account, show_class: ShowClass, entries: Collection[int], site: str) -> None:
    """Sends the letters once what they speak of stands in the database. `site` is the address of its front page."""
    if entries and site:
        transaction.on_commit(lambda: _send(by, show_class, list(entries), site), robust=True)


def send_again(*, by: Account, show_class: ShowClass, site: str) -> int:
    """Sends the letters that failed last time once more; how many went out."""
    require(by, show_class.show_breed.show, "publish-results")
    last = last_letters(show_class)
    if last is None or not last.failed:
        return 0
    return _send(by, show_class, last.entries, site, only=last.failed)


@dataclass(frozen=True, slots=True)
class Letters:
    """What became of the letters of a class: how many went out the last time, whose did not, of which entries."""

    sent: int
    failed: tuple[int, ...]
    entries: list[int]


def last_letters(show_class: ShowClass) -> Letters | None:
    line = AuditLine.objects.filter(doing=DOING, about=f"class:{show_class.pk}").order_by("-id").first()
    if line is None:
        return None
    return Letters(line.detail["sent"], tuple(line.detail["failed"]), line.detail["entries"])


def _send(
    by: Account, show_class: ShowClass, entries: list[int], site: str, only: Collection[int] | None = None
) -> int:
    """Writes and sends; one audit line of how it went, with accounts by number so that addresses can be erased."""
    letters = [letter for letter in _letters(entries, site) if only is None or letter[0] in only]
    sent, failed = _post(letters)
    show_id = show_class.show_breed.show_id
    about = f"class:{show_class.pk}"
    audit.record(who=by, doing=DOING, show_id=show_id, about=about, sent=len(sent), failed=failed, entries=entries)
    return len(sent)


def _post(letters: list[tuple[int, EmailMessage]]) -> tuple[list[int], list[int]]:
    """The accounts whose letter went out, and those whose letter did not."""
    connection = get_connection()
    try:
        connection.open()
    except FAILURES:
        # Each letter would wait for the same server in vain.
        return [], [account for account, _ in letters]
    sent: list[int] = []
    failed: list[int] = []
    for account, letter in letters:
        letter.connection = connection
        try:
            letter.send()
            sent.append(account)
        except FAILURES:
            failed.append(account)
    connection.close()
    return sent, failed


def _letters(entry_ids: Iterable[int], site: str) -> list[tuple[int, EmailMessage]]:
    entries = Entry.objects.filter(pk__in=entry_ids).select_related("dog", "show", "placing").order_by("number", "id")
    critiques = {(one.entry_id, one.language): one for one in Critique.objects.published().filter(entry__in=entries)}
    by_account: dict[Account, list[Entry]] = {}
    for entry in entries.prefetch_related("dog__owners__account"):
        for account in {owner.account for owner in entry.dog.owners.all() if owner.account}:
            by_account.setdefault(account, []).append(entry)
    return [
        (account.pk, _letter(account, found, critiques, site))
        for account, found in sorted(by_account.items(), key=lambda one: one[0].pk)
    ]


def _letter(
    account: Account, entries: list[Entry], critiques: dict[tuple[int, str], Critique], site: str
) -> EmailMessage:
    language = account.language or "en"
    told = words()[language]
    show = entries[0].show.name
    dogs = ", ".join(entry.dog.name for entry in entries)
    lines = [told["opening"].format(show=show), ""]
    for entry in entries:
        result = _result(entry, language)
        lines.append(told["line"].format(dog=entry.dog.name, number=entry.number or "", result=result))
        lines += [_where(entry, critiques.get((entry.pk, language)), told, site), ""]
    lines += [told["signing"], told["closing"], "", show]
    subject = " ".join(told["subject"].format(show=show, dogs=dogs).split())
    return EmailMessage(subject, "\n".join(line for line in lines if line is not None), to=[account.email])


def _where(entry: Entry, critique: Critique | None, told: dict[str, Any], site: str) -> str:
    if critique:
        return str(told["read"].format(address=site.rstrip("/") + reverse("home:critique", args=[critique.pk])))
    placing: Placing | None = getattr(entry, "placing", None)
    return str(told["waits"]) if placing and placing.presence == "present" else ""


def _result(entry: Entry, language: str) -> str:
    told = words()[language]
    placing: Placing | None = getattr(entry, "placing", None)
    if placing and placing.presence != "present":
        return str(told["absent"].format(presence=told["presences"].get(placing.presence, placing.presence)))
    found = result_in(language, entry.dog.sex, placing.grade, placing.place) if placing else ""
    return found or str(told["judged"])
