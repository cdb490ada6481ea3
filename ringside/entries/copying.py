"""What an earlier show asks of its entries as the start of a new one's: its terms, and no entry."""

from typing import Any

from ringside.entries.models import EntryTerms
from ringside.shows.models import Show


def copy_terms(*, source: Show, show: Show, **_: Any) -> None:
    for terms in EntryTerms.objects.filter(show=source):
        EntryTerms.objects.create(show=show, vaccination=terms.vaccination, groups=terms.groups)
