"""The finals: which are held, who judges each, what the judge decided, publishing, correcting. The desk records."""

from collections.abc import Sequence

from django.db import transaction
from django.utils import timezone
from django.utils.translation import ngettext

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.core.sentences import apart
from ringside.entries.models import Entry
from ringside.people.actions import person_for
from ringside.people.models import Account
from ringside.results.finals import ShowFinals, Stands, finals_of
from ringside.results.models import AwardCorrection, BreedGroup, Final, Finalist
from ringside.shows.access import require
from ringside.shows.books import rules_of
from ringside.shows.models import Show, ShowBreed


@transaction.atomic
def hold_finals(*, who: Account, show: Show) -> int:
    """The show holds every final that its breeds can lead to; how many were added."""
    require(who, show, "change-show")
    _lock(show)
    found = finals_of(show)
    added = Final.objects.bulk_create(
        Final(show=show, award=one.award.code, group=one.group) for one in found.offered if one.key not in found.rows
    )
    if not added:
        raise NotNow("Every final that the breeds of this show can lead to is held already.")
    record(who=who, doing="hold-finals", show_id=show.pk, added=len(added))
    return len(added)


@transaction.atomic
def drop_final(*, who: Account, final: Final) -> None:
    """The show does not hold this final. One that has begun stays."""
    require(who, final.show, "change-show")
    _lock(final.show)
    if final.finalists.exists() or final.corrections.exists() or _fresh(final).is_signed:
        raise NotNow("This final has begun: it cannot be dropped any more.")
    record(who=who, doing="drop-final", show_id=final.show_id, about=f"final:{final.pk}", award=final.award)
    final.delete()


@transaction.atomic
def put_in_group(*, who: Account, show_breed: ShowBreed, group: str) -> None:
    """The office's word on the group of a breed, for this show; the finals it has won places in keep them."""
    show = show_breed.show
    require(who, show, "change-show")
    if group not in [one.code for one in rules_of(show).groups]:
        raise NotNow("These rules have no such group.")
    BreedGroup.objects.update_or_create(show_breed=show_breed, defaults={"group": group})
    record(who=who, doing="put-in-group", show_id=show.pk, about=f"breed:{show_breed.pk}", group=group)


@transaction.atomic
def name_judge(*, who: Account, final: Final, name: str, email: str) -> None:
    """Who judges the final. A signed one keeps its judge."""
    require(who, final.show, "change-show")
    if _fresh(final).is_signed:
        raise NotNow("This final is signed already: it keeps its judge.")
    if not name.strip():
        raise NotNow("Write the judge's name.")
    final.judge = person_for(name=name.strip(), email=email.strip().lower())
    final.save(update_fields=["judge"])
    record(who=who, doing="name-final-judge", show_id=final.show_id, about=f"final:{final.pk}")


@transaction.atomic
def record_final(
    *, who: Account, final: Final, places: Sequence[int], absent: Sequence[int], is_signed: bool
) -> Stands:
    """Writes down what the judge of the final decided: catalogue numbers from first to last, and who did not come."""
    require(who, final.show, "record-finals")
    _lock(final.show)
    final = _fresh(final)
    if final.published_at:
        raise NotNow("This final is published: a change to it is a correction, with its reason.")
    placed, gone = _entries(final, places), _entries(final, absent)
    _check(final, placed, gone)
    _write(final, placed, gone)
    final.is_signed = False
    final.save(update_fields=["is_signed"])
    if is_signed:
        _sign(final)
    record(who=who, doing="record-final", show_id=final.show_id, about=f"final:{final.pk}", signed=is_signed)
    return stands_of(final)


def stands_of(final: Final, found: ShowFinals | None = None) -> Stands:
    found = found or finals_of(final.show)
    one = next((one for one in found.offered if one.key == (final.award, final.group)), None)
    if one is None:
        raise NotNow("No breed of this show leads to this final any more: look at the groups of the breeds.")
    return found.stand(one)


def _sign(final: Final) -> None:
    lacks = stands_of(final).missing_to_sign
    if lacks:
        raise NotNow("This final cannot be signed yet. Missing: {missing}.", missing=apart(lacks))
    final.is_signed = True
    final.save(update_fields=["is_signed"])


def _lock(show: Show) -> None:
    Show.objects.select_for_update().get(pk=show.pk)


def _fresh(final: Final) -> Final:
    return Final.objects.select_related("show", "judge").get(pk=final.pk)


def _entries(final: Final, numbers: Sequence[int]) -> list[Entry]:
    """The dogs of these numbers, each as the entry that stands for it in the finals where one does."""
    found = {entry.number: entry for entry in Entry.objects.filter(show=final.show, number__in=numbers)}
    found |= {entry.number: entry for entry in finals_of(final.show).entries.values()}
    unknown = [str(number) for number in numbers if number not in found]
    if unknown:
        raise NotNow("No dog of this show has the number {number}.", number=unknown[0])
    return [found[number] for number in numbers]


def _check(final: Final, placed: Sequence[Entry], gone: Sequence[Entry]) -> None:
    keys = [entry.pk for entry in placed]
    if len(set(keys)) != len(keys):
        raise NotNow("Each dog has one place in a final.")
    both = [entry for entry in placed if entry in gone]
    if both:
        raise NotNow(
            "Number {number} is placed and marked as not there: one of the two is wrong.", number=both[0].number
        )
    most = rules_of(final.show).award(final.award).places
    if len(placed) > most:
        words = ngettext(
            "This final places {most} dog under these rules.", "This final places {most} dogs under these rules.", most
        )
        raise NotNow(words.format(most=most))


def _write(final: Final, placed: Sequence[Entry], gone: Sequence[Entry]) -> None:
    final.finalists.all().delete()
    rows = [Finalist(final=final, entry=entry, place=place) for place, entry in enumerate(placed, 1)]
    Finalist.objects.bulk_create([*rows, *(Finalist(final=final, entry=entry) for entry in gone)])


@transaction.atomic
def publish_final(*, who: Account, final: Final) -> None:
    """Makes a signed final readable. NotNow says what is missing; a finding holds nothing back."""
    require(who, final.show, "publish-results")
    _lock(final.show)
    final = _fresh(final)
    if final.published_at:
        raise NotNow("This final is published already.")
    missing = stands_of(final).missing
    if missing:
        raise NotNow("This final cannot be published yet. Missing: {missing}.", missing=apart(missing))
    final.published_at = timezone.now()
    final.save(update_fields=["published_at"])
    record(who=who, doing="publish-final", show_id=final.show_id, about=f"final:{final.pk}")


@transaction.atomic
def correct_final(*, who: Account, final: Final, places: Sequence[int], why: str) -> list[AwardCorrection]:
    """Writes a published final as it should read; a correction is kept for each place that changes."""
    require(who, final.show, "correct-results")
    _lock(final.show)
    final = _fresh(final)
    if not final.published_at:
        raise NotNow("This final is not published yet: record it as the judge decided.")
    if not why.strip():
        raise NotNow("Write down why the final is corrected: it shows beside the result.")
    placed = _entries(final, places)
    dogs = {entry.dog_id for entry in placed}
    kept = final.finalists.filter(place=None).select_related("entry")
    gone = [one.entry for one in kept if one.entry.dog_id not in dogs]
    _check(final, placed, gone)
    before = {one.place: one.entry for one in final.finalists.exclude(place=None).select_related("entry")}
    after = dict(enumerate(placed, 1))
    changed = [place for place in sorted({*before, *after}) if _dog(before.get(place)) != _dog(after.get(place))]
    if not changed:
        raise NotNow("Nothing is changed.")
    _write(final, placed, gone)
    made = [_correction(who, final, place, before.get(place), after.get(place), why) for place in changed]
    record(who=who, doing="correct-final", show_id=final.show_id, about=f"final:{final.pk}", corrections=len(made))
    return made


def _dog(entry: Entry | None) -> int | None:
    return entry.dog_id if entry else None


def _correction(
    who: Account, final: Final, place: int, before: Entry | None, after: Entry | None, why: str
) -> AwardCorrection:
    return AwardCorrection.objects.create(
        show=final.show, final=final, award=final.award, place=place, before=before, after=after,
        cause=AwardCorrection.Cause.CORRECTED, why=why.strip()[:300], by=who,
    )  # fmt: skip
