"""The number cards of a show, with claim codes for those whom no letter reaches."""

from collections.abc import Sequence

from django.db.models import QuerySet
from django.utils.text import capfirst
from django.utils.translation import gettext as _

from ringside.entries.models import Entry
from ringside.home import claiming
from ringside.papers.cards import Card, cards_pdf
from ringside.results.queries import title_of
from ringside.shows.appointed import appointments_of
from ringside.shows.models import Show


def number_cards(*, show: Show, wanted: str, where: str, size: str) -> bytes:
    """A card for each numbered dog, with its classes.

    `wanted` says who gets a claim code: "all", "none", else owners without address.
    `where` is the address at which a code is typed in; it is printed beside each.
    """
    dogs: dict[int, list[Entry]] = {}
    for entry in _entries(show):
        dogs.setdefault(entry.dog_id, []).append(entry)
    firsts = [entries[0] for entries in dogs.values()]
    with_code = {"all": firsts, "none": []}.get(wanted)
    codes = claiming.codes_for(entries=claiming.without_address(firsts) if with_code is None else with_code)
    return cards_pdf([_card(entries, codes) for entries in dogs.values()], show.name, where, size)


def _entries(show: Show) -> QuerySet[Entry]:
    return (
        Entry.objects.filter(show=show, state=Entry.State.ENTERED, number__isnull=False)
        .select_related("dog", "show_class__show_breed__show", "show_class__show_breed__ring")
        .prefetch_related(appointments_of("show_class__show_breed__"))
        .order_by("number", "show_class__order", "id")
    )


def _card(entries: Sequence[Entry], codes: dict[int, str]) -> Card:
    """The card of a dog with these entries; the code is its first one's."""
    first, code = entries[0], codes.get(entries[0].pk, "")
    rings = dict.fromkeys(ring for entry in entries if (ring := entry.show_class.appointed.ring))
    return Card(
        number=str(first.number),
        dog=first.dog.name,
        titles=tuple(title_of(entry.show_class) for entry in entries),
        ring=", ".join(capfirst(_("ring {name}").format(name=ring.name)) for ring in rings),
        code=f"{code[:4]} {code[4:]}".strip(),
    )
