"""Sharing a published critique by a link, and taking the link back."""

import secrets
from typing import Any

from django.db import transaction
from django.http import Http404
from django.utils import timezone

from ringside.core.audit import record
from ringside.entries.consents.actions import agree_to_link, withdraw_link
from ringside.entries.models import Consent, Entry
from ringside.entries.own import owns
from ringside.home.models import Share
from ringside.people.models import Account
from ringside.results.models import Critique


@transaction.atomic
def share_entry(*, by: Account, entry: Entry) -> Share:
    """The entry's link; the one that stands already where there is one."""
    if not owns(by, entry.dog):
        raise Http404
    Entry.objects.select_for_update().get(pk=entry.pk)
    standing = share_of(entry)
    if standing:
        return standing
    record(who=by, doing="share-critique", show_id=entry.show_id, about=f"entry:{entry.pk}")
    consent = agree_to_link(by=by, dog=entry.dog, what=Consent.What.CRITIQUE_LINK, show=entry.show)
    return Share.objects.create(entry=entry, token=secrets.token_urlsafe(32), made_by=by, consent=consent)


@transaction.atomic
def withdraw_share(*, by: Account, share: Share) -> None:
    """The link leads nowhere from now on, for whoever has it."""
    if not owns(by, share.entry.dog):
        raise Http404
    end_share(by=by, share=share)


@transaction.atomic
def end_share(*, by: Account, share: Share) -> None:
    """Called by what has asked whether this person may: as an owner, or as who agreed to it."""
    Share.objects.filter(pk=share.pk, withdrawn_at=None).update(withdrawn_at=timezone.now())
    withdraw_link(who=by, consent=share.consent)
    record(who=by, doing="withdraw-share", show_id=share.entry.show_id, about=f"entry:{share.entry_id}")


def share_of(entry: Entry) -> Share | None:
    return Share.objects.filter(entry=entry, withdrawn_at=None).first()


def access_own_share(user: Any, share_id: int) -> Share:
    found = Share.objects.select_related("entry__dog").filter(pk=share_id).first()
    if found is None or not owns(user, found.entry.dog):
        raise Http404
    return found


def shared_critique(token: str, language: str) -> Critique:
    """The critique that a link leads to, in a language; 404 alike for a wrong, a withdrawn and an unpublished one."""
    share = Share.objects.filter(token=token, withdrawn_at=None, entry__show_class__publication__isnull=False).first()
    if share is None:
        raise Http404
    return critique_in(language, share.entry_id)


def critique_in(language: str, entry_id: int) -> Critique:
    """An entry's published critique in a language, in English where that has none; whoever calls has let them in."""
    found = (
        Critique.objects.published()
        .filter(entry_id=entry_id)
        .select_related(
            "judge",
            "entry__dog",
            "entry__placing",
            "entry__show_class__judged_by",
            "entry__show_class__show_breed__show",
        )
    )
    critique = found.filter(language=language).first() or found.filter(language="en").first()
    if critique is None:
        raise Http404
    return critique
