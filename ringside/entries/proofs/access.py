"""The only ways by which a page gets a proof: the dog's owner, and the office of a show where the dog is entered."""

import uuid
from typing import Any

from django.http import Http404

from ringside.entries.models import Entry, EntryRequest, Proof
from ringside.entries.own import owns
from ringside.people.models import Account
from ringside.shows.may import MAY
from ringside.shows.models import Role


def access_proof(user: Any, public_id: uuid.UUID) -> Proof:
    proof = Proof.objects.select_related("dog").filter(public_id=public_id).first()
    if proof is None or not isinstance(user, Account) or not (owns(user, proof.dog) or _looks(user, proof)):
        raise Http404
    return proof


def own_proof(user: Any, public_id: uuid.UUID) -> Proof:
    proof = access_proof(user, public_id)
    if not owns(user, proof.dog):
        raise Http404
    return proof


def _looks(user: Account, proof: Proof) -> bool:
    """Whether the person ticks proofs in a show where the dog is entered or waits."""
    shows = Role.objects.filter(account=user, kind__in=MAY["tick-proofs"][1]).values("show")
    entered = Entry.objects.filter(dog=proof.dog, show__in=shows, state=Entry.State.ENTERED)
    waits = EntryRequest.objects.filter(dog=proof.dog, show__in=shows, state=EntryRequest.State.WAITING)
    return entered.exists() or waits.exists()
