"""Withdrawing what one agreed to: the link or the leave to read that rests on it goes with it."""

from typing import Any

from django.db import transaction
from django.http import Http404

from ringside.entries.consents.actions import withdraw_link, withdraw_told
from ringside.entries.models import Consent
from ringside.home.models import Reader, Share
from ringside.home.readers import end_reading
from ringside.home.sharing import end_share
from ringside.people.models import Account
from ringside.photos import actions as photos
from ringside.photos.models import Photo


def access_own_consent(user: Any, consent_id: int) -> Consent:
    found = Consent.objects.select_related("person", "show", "dog").filter(pk=consent_id).first()
    if found is None or not isinstance(user, Account) or found.person.account_id != user.pk:
        raise Http404
    return found


@transaction.atomic
def withdraw(*, who: Account, consent: Consent) -> None:
    """From now on nothing rests on it: no address is printed, a link leads nowhere, whoever was let read reads no
    more, a critique is its owner's."""
    if consent.what in (Consent.What.CATALOGUE_ADDRESS, Consent.What.CRITIQUES_PUBLIC):
        withdraw_told(who=who, consent=consent, for_office=False)
        return
    # Whoever sold the dog since ends the link all the same: it was this person who agreed to it.
    for share in Share.objects.filter(consent=consent, withdrawn_at=None).select_related("entry__dog"):
        end_share(by=who, share=share)
    for reader in Reader.objects.filter(consent=consent, withdrawn_at=None):
        end_reading(by=who, reader=reader)
    for photo in Photo.objects.filter(consent=consent).select_related("dog"):
        photos.end_share(by=who, photo=photo)
    consent.refresh_from_db()
    withdraw_link(who=who, consent=consent)
