"""A breed's awards decided on paper: typed in from the page that the judge signed, with a photo of that page."""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from django.db import transaction
from django.utils.translation import gettext as _
from django.utils.translation import gettext_noop

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.core.sentences import apart
from ringside.people.models import Account
from ringside.results.award_corrections import entry_for
from ringside.results.awards import awards_of
from ringside.results.models import AwardsPublication, PaperAwards
from ringside.results.paper_actions import attest, keep_first_page
from ringside.ring.awards import FIELD, BreedCard, class_words
from ringside.ring.from_paper import is_signed_at_ring, write_from_paper
from ringside.shows.access import require
from ringside.shows.models import ShowBreed
from scoring.rules.award_card import Offered, competing

# What the page says of an award, by the code the award card knows it by: the dog's catalogue number, False where the
# judge withholds it, None where the page says nothing.
Decided = Mapping[str, int | bool | None]


class AgainstTheRules(NotNow):
    """What is typed does not go with the rules: `said` is why, and it takes a word that the page does say so."""

    def __init__(self, said: Sequence[str]) -> None:
        self.said = said
        words = gettext_noop("Look again, or say that the judge's page does say so: {findings}")
        super().__init__(words, findings=" ".join(said))


@transaction.atomic
def type_awards(
    *, who: Account, show_breed: ShowBreed, decided: Decided, page: bytes | None = None, why: str = "",
    as_written: bool = False,
) -> PaperAwards:  # fmt: skip
    """Writes the breed's awards as the judge's page has them.

    It counts as signed once a photo or PDF of the page is there, or `why` says why there is none; both may come later.
    What the rules do not allow is written only where `as_written` says that the page does say so: the judge decides,
    and the finding stays beside it. Typed again before publishing, it replaces what was typed. NotNow where the judge
    signed on a tablet, or judge or ring are not known.
    """
    show = show_breed.show
    require(who, show, "type-classes")
    ShowBreed.objects.select_for_update().get(pk=show_breed.pk)
    _require_open(show_breed)
    told = show_breed.appointed_for()
    if told.judge is None or told.ring is None:
        raise NotNow("The awards of this breed have no judge or no ring yet: appoint them on the set-up page.")
    card = card_as_typed(show_breed, decided)
    said = said_of(card)
    if said and not as_written:
        raise AgainstTheRules(said)
    paper = PaperAwards.objects.filter(show_breed=show_breed).first() or PaperAwards(show_breed=show_breed)
    attest(paper, judge=told.judge, who=who, page=page, why=why)
    fields = {f"{FIELD}{one.code}": card.decided.get(one.code) for one in card.awards}
    write_from_paper(who=who, ring=told.ring, judged=show_breed, fields=fields, sign=paper.is_attested)
    about = f"breed:{show_breed.pk}"
    record(who=who, doing="type-awards", show_id=show.pk, about=about, signed=paper.is_attested, page=bool(paper.page))
    return paper


def _require_open(show_breed: ShowBreed) -> None:
    if AwardsPublication.objects.filter(show_breed=show_breed).exists():
        raise NotNow("These awards are published already: what is wrong in them is corrected on their page.")
    if is_signed_at_ring(show_breed):
        raise NotNow("The judge has signed these awards on a tablet: they are not typed over. Ask the judge.")


def card_as_typed(show_breed: ShowBreed, decided: Decided) -> BreedCard:
    """The breed's award card as it would be. NotNow where a number is none of the breed, or of the other sex."""
    [found] = awards_of([show_breed])
    card = replace(found.card, decided={})
    for one in card.awards:
        number = decided.get(one.code)
        if number is False:
            card = replace(card, decided={**card.decided, one.code: False})
        elif number is not None:
            card = replace(card, decided={**card.decided, one.code: str(entry_for(card, one, number).pk)})
    return card


def competing_now(card: BreedCard, one: Offered) -> list[str]:
    """The numbers that compete for an award, as far as classes are signed and awards decided."""
    return [str(card.entries[each.entry].number or each.entry) for each in competing(card.book, one, card.card)]


def said_of(card: BreedCard) -> list[str]:
    """What does not go with the rules, and where the reason may be a class whose result is not here yet."""
    findings = card.findings
    if findings and card.unsigned:
        classes = apart(class_words(card.book, one) for one in card.unsigned)
        findings = [*findings, _("Not signed yet: {classes}.").format(classes=classes)]
    return findings


def paper_of(show_breed: ShowBreed) -> PaperAwards | None:
    return PaperAwards.objects.filter(show_breed=show_breed).select_related("judge", "typed_by").first()


@transaction.atomic
def attach_awards_page(*, who: Account, show_breed: ShowBreed, page: bytes) -> PaperAwards:
    """Attaches the page of published awards that were typed without one. One that is there stays."""
    require(who, show_breed.show, "type-classes")
    paper = PaperAwards.objects.select_for_update().filter(show_breed=show_breed).first()
    if paper is None:
        raise NotNow("These awards were not typed in from paper.")
    keep_first_page(paper, page)
    record(who=who, doing="attach-page", show_id=show_breed.show_id, about=f"breed:{show_breed.pk}")
    return paper
