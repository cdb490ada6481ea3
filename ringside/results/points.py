"""Points of a show, where its body counts them: from published classes, awards and finals to each winner's points."""

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from django.db.models import Q
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy

from ringside.core.sentences import listed, sentence
from ringside.entries.models import Entry
from ringside.results.finals import groups_of
from ringside.results.models import AwardGiven, AwardsPublication, Finalist, Placing, Publication
from ringside.ring.queries import breed_said
from ringside.shows.books import rules_of
from ringside.shows.models import Show, ShowBreed, ShowClass
from scoring.findings import Finding
from scoring.rules.points import GroupPlace, Result, Shown, counted, show_points
from scoring.rules.points import Show as CountedShow
from scoring.rules.rulebook import PointsRule, RuleBook, Sex

BEST_IN_GROUP, BEST_IN_SHOW = "best-in-group", "best-in-show"
COUNTS = {
    "dogs": gettext_lazy("dogs"),
    "bitches": gettext_lazy("bitches"),
    "class_dogs": gettext_lazy("class dogs"),
    "class_bitches": gettext_lazy("class bitches"),
    "champion_dogs": gettext_lazy("champion dogs"),
    "champion_bitches": gettext_lazy("champion bitches"),
}


@dataclass(frozen=True)
class Earned:
    """One dog's points of the show, and the wins they come from; they are never added up."""

    entry: Entry
    points: int
    wins: tuple[str, ...]


@dataclass(frozen=True)
class BreedPoints:
    """A breed's points. `waits_for` says what is not published yet; then there are none."""

    breed: ShowBreed
    title: str
    counts: Mapping[str, int]
    earned: tuple[Earned, ...] = ()
    why: tuple[str, ...] = ()
    waits_for: tuple[str, ...] = ()

    @property
    def waits(self) -> str:
        return listed(self.waits_for)


@dataclass(frozen=True)
class Facts:
    """What the points of several breeds are made of, each fetched once."""

    book: RuleBook
    rule: PointsRule
    placings: Mapping[int, Sequence[Placing]]
    awards: Mapping[int, Sequence[AwardGiven]]
    unpublished: frozenset[int]
    awards_published: frozenset[int]
    finals: Mapping[int, Sequence[Finalist]]
    breeds_in_group: Mapping[int, int]


def count_name(name: str) -> str:
    return str(COUNTS.get(name, name.replace("_", " ")))


def counts_points(show: Show) -> bool:
    return rules_of(show).points is not None


def points_of(show: Show, only: Sequence[ShowBreed] | None = None) -> list[BreedPoints]:
    """The points of the show's breeds, or of some of them; none under a body that counts no points."""
    book = rules_of(show)
    if book.points is None:
        return []
    breeds = list(
        ShowBreed.objects.filter(show=show, classes__entries__state=Entry.State.ENTERED)
        .select_related("show", "judge").distinct().order_by("day", "id")
    )  # fmt: skip
    facts = _facts(show, book, book.points, breeds)
    wanted = None if only is None else {breed.pk for breed in only}
    return [_of_breed(breed, facts) for breed in breeds if wanted is None or breed.pk in wanted]


def _facts(show: Show, book: RuleBook, rule: PointsRule, breeds: Sequence[ShowBreed]) -> Facts:
    placings, awards = defaultdict(list), defaultdict(list)
    published = Publication.objects.filter(show_class__show_breed__show=show)
    rows = Placing.objects.filter(show_class__in=published.values("show_class_id"))
    for placing in rows.select_related("entry__dog", "show_class").order_by("entry__number", "id"):
        placings[placing.show_class.show_breed_id].append(placing)
    public = frozenset(AwardsPublication.objects.filter(show_breed__show=show).values_list("show_breed_id", flat=True))
    for row in AwardGiven.objects.filter(show_breed_id__in=public, entry__isnull=False).order_by("id"):
        awards[row.show_breed_id].append(row)
    waiting = ShowClass.objects.filter(
        Q(publication__isnull=True), show_breed__show=show, entries__state=Entry.State.ENTERED
    )
    finals = defaultdict(list)
    places = Finalist.objects.filter(final__show=show, final__published_at__isnull=False, place__isnull=False)
    for one in places.select_related("final"):
        finals[one.entry_id].append(one)
    return Facts(
        book, rule, placings, awards, frozenset(waiting.values_list("show_breed_id", flat=True)), public, finals,
        _breeds_in_group(groups_of(show, breeds), placings, book, rule),
    )  # fmt: skip


def _breeds_in_group(
    groups: Mapping[int, str | None], placings: Mapping[int, Sequence[Placing]], book: RuleBook, rule: PointsRule
) -> dict[int, int]:
    """For each breed, the breeds of its group that competed: those with a dog that counts."""
    classes = {code for count in rule.counted.values() for code in count.classes}
    there = [
        pk
        for pk, some in placings.items()
        if any(one.show_class.code in classes and _is_there(one, book) for one in some)
    ]
    sizes = Counter(groups.get(pk) for pk in there)
    return {pk: max(sizes[group], 1) for pk, group in groups.items() if group}


def _is_there(placing: Placing, book: RuleBook) -> bool:
    """Whether a dog can be counted: it was there, and was not sent out or unable to be judged."""
    out = [grade.code for grade in book.grades if not grade.may_be_placed]
    return placing.presence == "present" and placing.grade not in out


def _of_breed(breed: ShowBreed, facts: Facts) -> BreedPoints:
    rows = facts.placings.get(breed.pk, ())
    shown = [Shown(_sex(one), one.show_class.code, _is_there(one, facts.book)) for one in rows]
    entered, left_out = counted(facts.rule, shown)
    competing = {name: entered[name] - left_out[name] for name in entered}
    waits = _waits_for(breed, facts)
    if waits:
        return BreedPoints(breed, breed_said(breed), competing, waits_for=waits)
    entries = {str(one.entry_id): one.entry for one in rows}
    wins = _wins(breed, facts)
    results = [Result(key, "dog" if entries[key].dog.sex == "dog" else "bitch", wins[key]) for key in wins]
    show = CountedShow(
        entered, results, left_out, group=_group_places(results, breed, facts), best_in_show=_best(results, facts)
    )
    points, why = show_points(facts.book, show)
    barred = {str(one.entry_id) for one in rows if one.show_class.code in facts.rule.no_points_from}
    earned = [Earned(entries[key], points[key], wins[key]) for key in wins if key not in barred]
    words = tuple(_words(one, entries) for one in why if one.facts.get("dog") not in barred)
    return BreedPoints(breed, breed_said(breed), competing, tuple(earned), words)


def _sex(placing: Placing) -> Sex:
    return "dog" if placing.show_class.sex == "dog" else "bitch"


def _waits_for(breed: ShowBreed, facts: Facts) -> tuple[str, ...]:
    waits = [_("every class to be published")] if breed.pk in facts.unpublished else []
    return (*waits, *([] if breed.pk in facts.awards_published else [_("the awards to be published")]))


def _wins(breed: ShowBreed, facts: Facts) -> dict[str, tuple[str, ...]]:
    """The wins that earn points, of each dog that has one; a group's first counts where the rules give it points."""
    known = {win.code for win in facts.rule.wins}
    found: dict[str, list[str]] = defaultdict(list)
    for row in facts.awards.get(breed.pk, ()):
        if row.award in known:
            found[str(row.entry_id)].append(row.award)
    for key in list(found):
        firsts = [one.final.award for one in facts.finals.get(int(key), ()) if one.place == 1]
        found[key] += [award for award in firsts if award in known]
    return {key: tuple(wins) for key, wins in found.items()}


def _group_places(results: Iterable[Result], breed: ShowBreed, facts: Facts) -> dict[str, GroupPlace]:
    if not facts.rule.group:
        return {}
    return {
        one.dog: GroupPlace(final.place or 0, facts.breeds_in_group.get(breed.pk, 1))
        for one in results
        for final in facts.finals.get(int(one.dog), ())
        if final.final.award == BEST_IN_GROUP
    }


def _best(results: Iterable[Result], facts: Facts) -> str | None:
    if facts.rule.best_in_show is None:
        return None
    return next(
        (
            one.dog
            for one in results
            for final in facts.finals.get(int(one.dog), ())
            if final.final.award == BEST_IN_SHOW and final.place == 1
        ),
        None,
    )


def _words(finding: Finding, entries: Mapping[str, Entry]) -> str:
    """A step in words, with the catalogue number for the entry."""
    named = {name: _named(value, entries) for name, value in finding.facts.items() if name in ("dog", "dogs")}
    return sentence(Finding(finding.code, finding.severity, {**finding.facts, **named}))


def _named(value: object, entries: Mapping[str, Entry]) -> object:
    if isinstance(value, list):
        return [_named(one, entries) for one in value]
    entry = entries.get(str(value))
    return _("Number {number}").format(number=entry.number) if entry else value
