"""Changing published awards: corrected with its reason, or cancelled and passed on as the rules say."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from django.db import transaction
from django.db.models import Q
from django.utils import timezone
from django.utils.formats import date_format
from django.utils.translation import gettext as _

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.dogs.wording import SEXES
from ringside.entries.models import Entry
from ringside.people.models import Account
from ringside.results.awards import awards_of
from ringside.results.finals import title_of_final
from ringside.results.models import AwardCorrection, AwardGiven, Finalist
from ringside.results.wording import state_words
from ringside.ring.awards import BreedCard
from ringside.ring.queries import breed_said
from ringside.shows.access import require
from ringside.shows.books import award_name, rules_of
from ringside.shows.models import Show, ShowBreed
from scoring.rules.award_card import Offered, competing, offered, passes_to

Cause = AwardCorrection.Cause


@transaction.atomic
def correct_award(*, who: Account, show_breed: ShowBreed, code: str, number: int | None, why: str) -> AwardCorrection:
    """Gives a published award to the dog of this number, or to none; `code` as the award card names it."""
    show = show_breed.show
    require(who, show, "correct-results")
    Show.objects.select_for_update().get(pk=show.pk)
    one = next((one for one in offered(rules_of(show)) if one.code == code), None)
    if one is None or not hasattr(show_breed, "awards_publication"):
        raise NotNow("These awards are not published yet: what the judge decided is changed at the ring.")
    if not why.strip():
        raise NotNow("Write down why the award is corrected: it shows beside the award.")
    [found] = awards_of([show_breed])
    entry = entry_for(found.card, one, number) if number else None
    row = AwardGiven.objects.filter(show_breed=show_breed, award=one.award.code, sex=one.sex or "").first()
    row = row or AwardGiven(show_breed=show_breed, award=one.award.code, sex=one.sex or "")
    if (row.entry and row.entry.dog_id) == (entry and entry.dog_id):
        raise NotNow("Nothing is changed.")
    made = _change(who, row, entry, Cause.CORRECTED, why)
    record(who=who, doing="correct-award", show_id=show.pk, about=f"breed:{show_breed.pk}", award=code)
    return made


def entry_for(card: BreedCard, one: Offered, number: int) -> Entry:
    """What an award names of the dog of this number: the entry that competes for it, else one that is entered.

    NotNow where no dog of the breed, or of the award's sex, has the number.
    """
    own = [entry for entry in card.entries.values() if entry.number == number]
    if not own:
        raise NotNow("No dog of this breed has the number {number}.", number=number)
    if one.sex == "dog" and own[0].dog.sex != one.sex:
        raise NotNow("Number {number} is a bitch, and this award is for dogs.", number=number)
    if one.sex and own[0].dog.sex != one.sex:
        raise NotNow("Number {number} is a dog, and this award is for bitches.", number=number)
    entries = {each.entry for each in competing(card.book, one, card.card)}
    return min(own, key=lambda entry: (str(entry.pk) not in entries, entry.state != Entry.State.ENTERED))


def _change(who: Account, row: AwardGiven, entry: Entry | None, cause: str, why: str) -> AwardCorrection:
    """Writes the award as it stands now. Without a dog it is cancelled: the judge did not withhold it."""
    before = row.entry
    row.entry, row.withheld, row.cancelled = entry, False, entry is None
    row.save()
    return AwardCorrection.objects.create(
        show=row.show_breed.show, show_breed=row.show_breed, award=row.award, sex=row.sex, before=before, after=entry,
        cause=cause, why=why.strip()[:300], by=who, told="" if entry else "cancelled",
    )  # fmt: skip


@transaction.atomic
def cancel_awards(*, who: Account, entry: Entry, why: str) -> list[AwardCorrection]:
    """Takes every published award and final place of this show from a dog, whichever of its entries has it.

    Rule: an award with a reserve that moves up goes to the holder of the reserve, and the reserve to nobody; any other
    stays with nobody, and in a final nobody moves up.
    Source: the rule book's awards. Class places are corrected on the class's own page, by what the body decides.
    """
    show = entry.show
    require(who, show, "correct-results")
    Show.objects.select_for_update().get(pk=show.pk)
    if not why.strip():
        raise NotNow("Write down why the awards are cancelled: it shows beside them.")
    made = [*_from_breed(who, entry, why), *_from_finals(who, entry, why)]
    if not made:
        raise NotNow("Number {number} has no published award in this show.", number=entry.number)
    record(who=who, doing="cancel-awards", show_id=show.pk, about=f"entry:{entry.pk}", corrections=len(made))
    return made


def _from_breed(who: Account, entry: Entry, why: str) -> Iterator[AwardCorrection]:
    book = rules_of(entry.show)
    own = {"entry__dog": entry.dog_id, "show_breed__show": entry.show_id}
    rows = AwardGiven.objects.filter(**own, show_breed__awards_publication__isnull=False)
    for row in rows.select_related("show_breed__show", "entry").order_by("id"):
        reserve = passes_to(book, row.award)
        below = reserve and AwardGiven.objects.filter(
            show_breed=row.show_breed, award=reserve.code, sex=row.sex, entry__isnull=False
        ).exclude(entry__dog=entry.dog_id).select_related("show_breed__show", "entry").first()  # fmt: skip
        if not below:
            yield _change(who, row, None, Cause.CANCELLED, why)
            continue
        yield _change(who, row, below.entry, Cause.PASSED_ON, why)
        yield _change(who, below, None, Cause.PASSED_ON, why)


def _from_finals(who: Account, entry: Entry, why: str) -> Iterator[AwardCorrection]:
    own = {"entry__dog": entry.dog_id, "final__show": entry.show_id}
    rows = Finalist.objects.filter(**own, place__isnull=False, final__published_at__isnull=False)
    for row in rows.select_related("final", "entry").order_by("id"):
        place, final, has = row.place, row.final, row.entry
        row.delete()
        yield AwardCorrection.objects.create(
            show=entry.show, final=final, award=final.award, place=place, before=has, cause=Cause.CANCELLED,
            told="cancelled", why=why.strip()[:300], by=who,
        )  # fmt: skip


@dataclass(frozen=True, slots=True)
class Told:
    """A correction of an award in words."""

    correction: AwardCorrection
    what: str
    before: str
    after: str


def award_corrections_of(show: Show, show_breed: ShowBreed | None = None) -> list[Told]:
    """What was changed after publishing, in the order it was changed; of the whole show, or of one breed."""
    found = AwardCorrection.objects.filter(show=show)
    if show_breed is not None:
        found = found.filter(show_breed=show_breed)
    rows = found.select_related("before__dog", "after__dog", "final", "show_breed", "by", "show")
    return [_told(one) for one in rows.order_by("at", "id")]


def award_changes_of(entries: Iterable[Entry]) -> dict[int, list[str]]:
    """What was changed after publishing in the awards of each entry, in sentences for the dog's owner."""
    ids = {entry.pk for entry in entries}
    rows = AwardCorrection.objects.filter(Q(before__in=ids) | Q(after__in=ids))
    said: dict[int, list[str]] = {}
    for one in rows.select_related("before__dog", "after__dog", "final", "show_breed", "show").order_by("at", "id"):
        facts = {"award": _told(one).what, "day": date_format(timezone.localdate(one.at)), "why": one.why}
        if one.before_id in ids:
            words = _("No longer has {award}: corrected on {day}. {why}").format(**facts)
            said.setdefault(one.before_id or 0, []).append(words)
        if one.after_id in ids:
            words = _("Has {award}: corrected on {day}. {why}").format(**facts)
            said.setdefault(one.after_id or 0, []).append(words)
    return said


def _told(one: AwardCorrection) -> Told:
    nobody = _("nobody")
    return Told(one, _what(one), _who(one.before, nobody), _who(one.after, state_words(one.told) or nobody))


def _what(one: AwardCorrection) -> str:
    book = rules_of(one.show)
    award = book.award(one.award)
    if one.final:
        title = title_of_final(book, one.final.award, one.final.group)
        return _("{final}, place {place}").format(final=title, place=one.place) if award.places > 1 else title
    if one.show_breed is None:
        return ""
    name = ", ".join(map(str, filter(None, (award_name(award), SEXES.get(one.sex)))))
    return _("{breed}: {award}").format(breed=breed_said(one.show_breed), award=name)


def _who(entry: Entry | None, otherwise: str) -> str:
    return f"{entry.number or ''} {entry.dog.name}".strip() if entry else otherwise
