"""What entering on the web keeps of a person, and how it is forgotten."""

from typing import Any

from ringside.entries.models import EntryRequest, GroupEntry, Proof
from ringside.entries.proofs.keeping import forget_proofs
from ringside.people.models import Account


def kept_of_entering(account: Account) -> dict[str, Any]:
    """As plain values: entries that waited, copies of papers, groups and handlers. The copies themselves are under
    each dog."""
    return {
        "asked": [_asked(one) for one in _requests(account)],
        "proofs": [
            {"dog": proof.dog.name, "need": proof.need, "sent_at": proof.sent_at.isoformat(timespec="seconds")}
            for proof in Proof.objects.filter(sent_by=account).select_related("dog").order_by("sent_at", "id")
        ],
        "groups": [
            {"show": one.show.name, "competition": one.code, "name": one.name, "handler_age": one.handler_age}
            for one in GroupEntry.objects.filter(account=account).select_related("show").order_by("entered_at", "id")
        ],
    }


def _requests(account: Account) -> list[EntryRequest]:
    found = EntryRequest.objects.filter(account=account).select_related("show", "dog")
    return list(found.order_by("asked_at", "id"))


def _asked(one: EntryRequest) -> dict[str, Any]:
    return {
        "show": one.show.name,
        "dog": one.name,
        "typed": one.texts,
        "classes": one.classes,
        "state": one.get_state_display(),
        "reason": one.reason,
        "asked_at": one.asked_at.isoformat(timespec="seconds"),
    }


def forget_entering(*, account: Account, addresses: set[str]) -> None:
    """Before an account goes: copies of papers go at once, and addresses go out of what the office has put aside.

    Entries that the person sent and that wait go with the account.
    """
    forget_proofs(Proof.objects.filter(sent_by=account))
    for address in addresses:
        for one in EntryRequest.objects.filter(texts__email__iexact=address):
            one.texts = {**one.texts, "email": ""}
            one.save(update_fields=["texts"])
