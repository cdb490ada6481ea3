"""A class or a breed's awards on paper enter the ring's record as edits of a card, stamped as what they are: typed in.

So every tablet of the ring hears of it, awards and finals find it as any other, and what a tablet wrote before stays in
the trail: what is typed replaces it.
"""

from collections.abc import Mapping
from typing import Any

from django.db import transaction

from ringside.core.denied import NotNow
from ringside.people.models import Account
from ringside.ring.access import Worker
from ringside.ring.actions import edits_of, take_edits
from ringside.ring.models import Edit, Sheet
from ringside.ring.office_edits import office_edit
from ringside.ring.reasons import reason, reason_said
from ringside.ring.rights import PAPER
from ringside.shows.models import Ring, ShowBreed, ShowClass
from scoring.merging import covers_for

# False is none of these: it says that an award is withheld.
EMPTY: tuple[Any, ...] = (None, "", [])


def card_of(judged: ShowClass | ShowBreed) -> str:
    """The key of the card of a class, or of a breed's awards."""
    return f"{'class' if isinstance(judged, ShowClass) else 'breed'}:{judged.pk}"


def is_signed_at_ring(judged: ShowClass | ShowBreed) -> bool:
    """Whether the judge has signed the card on a tablet: then it is not typed over."""
    card = Sheet.objects.filter(key=card_of(judged), signed__isnull=False).first()
    if card is None:
        return False
    signatures = Edit.objects.filter(sheet=card.key, field="signature", state=Edit.State.TAKEN)
    last = signatures.order_by("sequence").last()
    return last is not None and last.role != PAPER


@transaction.atomic
def write_from_paper(
    *, who: Account, ring: Ring, judged: ShowClass | ShowBreed, fields: Mapping[str, Any], sign: bool
) -> None:
    """Writes these fields of the card, whatever stood there before; `sign` says that the judge has signed them.

    Called by the action that asks for the right and the page. NotNow where the card is not this ring's.
    """
    key = card_of(judged)
    Ring.objects.select_for_update().get(pk=ring.pk)
    known = edits_of(key)
    touched = {edit.field for edit in known}
    # An empty value is written where there is something to empty; the same value again replaces what differs or waits.
    _write(who, ring, [
        office_edit("paper", key, field, value, known)
        for field, value in fields.items() if field in touched or value not in EMPTY
    ])  # fmt: skip
    if sign:
        known = edits_of(key)
        value = {"covers": list(covers_for(known))}
        _write(who, ring, [office_edit("paper", key, "signature", value, known)])


def _write(who: Account, ring: Ring, edits: list[dict[str, Any]]) -> None:
    waits = reason("after-signing")
    for answer in take_edits(worker=Worker(ring, frozenset({PAPER}), account=who), raw_edits=edits):
        if answer.state != "applied" and answer.reason != waits:
            raise NotNow(reason_said(answer.reason))
