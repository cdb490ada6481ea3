"""How far a dog's wins lead toward its body's titles: only shows kept here are counted, and the page says so."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from ringside.core.sentences import sentence
from ringside.dogs.models import Dog
from ringside.entries.models import Entry
from ringside.results.models import AwardGiven
from ringside.results.points import Earned, points_of
from ringside.results.wording import title_name
from ringside.shows.appointed import appointments_of
from ringside.shows.books import rules_of
from ringside.shows.known import notes_on_titles
from ringside.shows.models import Show
from scoring.rules.ages import completed_months
from scoring.rules.loader import load
from scoring.rules.rulebook import RuleBook
from scoring.rules.titles import TitleAnswer, Win, title_answers


@dataclass(frozen=True)
class TowardTitle:
    """One title: `is_gained` by the wins counted here; `missing` are sentences, by the ways to the title."""

    name: str
    is_gained: bool
    missing: tuple[str, ...]


@dataclass(frozen=True)
class Count:
    """A dog's titles under one body. `shows` are those that gave a win, each with the dog's points there."""

    body: str
    shows: tuple[tuple[str, int | None], ...]
    titles: tuple[TowardTitle, ...]
    notes: tuple[str, ...]


def title_counts(dog: Dog) -> list[Count]:
    """For each body under which the dog has a published win here: what its titles still ask."""
    breed = "show_class__show_breed__"
    wider = [f"{breed}{name}" for name in ("judge", "ring", "awards_judged_by", "show")]
    entries = Entry.objects.filter(dog=dog, state=Entry.State.ENTERED).select_related("show", "dog", *wider)
    entries = entries.prefetch_related(appointments_of(breed))
    by_body: dict[str, list[Entry]] = {}
    for entry in entries.order_by("show__first_day", "id"):
        by_body.setdefault(entry.show.rules, []).append(entry)
    counts = (_count(rules, some) for rules, some in by_body.items())
    return [count for count in counts if count]


def _count(rules: str, entries: Sequence[Entry]) -> Count | None:
    book = load(rules)
    wins, shows = [], []
    for entry in entries:
        earned = _earned(entry) if book.points else None
        of_show = list(_wins(entry, earned, book))
        wins += of_show
        if of_show:
            shows.append((entry.show.name, earned.points if earned else None))
    if not wins:
        return None
    titles = tuple(_title(book, answer) for answer in title_answers(book, wins))
    return Count(book.name, tuple(shows), titles, tuple(notes_on_titles(book)))


def _title(book: RuleBook, answer: TitleAnswer) -> TowardTitle:
    name = next(title_name(title) for title in book.titles if title.code == answer.title)
    return TowardTitle(name, answer.gained, tuple(dict.fromkeys(sentence(found) for found in answer.missing)))


def _earned(entry: Entry) -> Earned | None:
    [breed] = points_of(entry.show, [entry.show_class.show_breed]) or [None]
    return next((one for one in breed.earned if one.entry.pk == entry.pk), None) if breed else None


def _wins(entry: Entry, earned: Earned | None, book: RuleBook) -> Iterator[Win]:
    """The published awards of one show that a title asks for. Where points count, the show's points go with each.

    Limits: under a body that counts points the judge of the breed's awards stands for all points of the show.
    """
    asked = {award for title in book.titles for route in title.routes for need in route.needs for award in need.awards}
    breed = entry.show_class.show_breed
    told = breed.appointed
    rows = AwardGiven.objects.filter(entry=entry, award__in=asked, show_breed__awards_publication__isnull=False)
    for row in rows.order_by("id"):
        if book.points and earned is None:
            continue
        day = told.day or entry.show.first_day
        yield Win(
            award=row.award, won_on=day, judge=told.judge.name if told.judge else "", country=country_of(entry.show),
            points=earned.points if earned else None, age_months=_age(entry, day), show=entry.show.slug,
        )  # fmt: skip


def country_of(show: Show) -> str:
    """Where a show was held, as far as its rules say: the member whose overlay it uses, else the body itself."""
    return ", ".join(show.overlays) or rules_of(show).name


def _age(entry: Entry, day: date) -> int | None:
    return completed_months(entry.dog.born, day)
