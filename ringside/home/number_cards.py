"""The number cards of a show, with claim codes for those whom no letter reaches."""

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
    """A card for each numbered dog. `wanted` says who gets a claim code: "all", "none", else owners without address.

    `where` is the address at which a code is typed in; it is printed beside each.
    """
    entries = list(_entries(show))
    with_code = {"all": entries, "none": []}.get(wanted)
    codes = claiming.codes_for(entries=claiming.without_address(entries) if with_code is None else with_code)
    return cards_pdf([_card(entry, codes) for entry in entries], show.name, where, size)


def _entries(show: Show) -> QuerySet[Entry]:
    return (
        Entry.objects.filter(show=show, state=Entry.State.ENTERED, number__isnull=False)
        .select_related("dog", "show_class__show_breed__show", "show_class__show_breed__ring")
        .prefetch_related(appointments_of("show_class__show_breed__"))
        .order_by("number", "id")
    )


def _card(entry: Entry, codes: dict[int, str]) -> Card:
    code = codes.get(entry.pk, "")
    ring = entry.show_class.appointed.ring
    return Card(
        number=str(entry.number),
        dog=entry.dog.name,
        title=title_of(entry.show_class),
        ring=capfirst(_("ring {name}").format(name=ring.name)) if ring else "",
        code=f"{code[:4]} {code[4:]}".strip(),
    )
