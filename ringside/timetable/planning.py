"""A first timetable to mend: no judge in two rings and no exhibitor before two judges at once, a break for each judge.

Times that are planned stay. The office's page and the command ask the same plan of the core's search.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, time
from decimal import Decimal
from itertools import combinations
from math import ceil
from typing import Any

from django.utils.formats import date_format
from django.utils.translation import gettext
from django.utils.translation import gettext_noop as _

from ringside.core.sentences import apart
from ringside.dogs.models import Ownership
from ringside.entries.models import Entry
from ringside.shows.models import Show
from ringside.timetable.queries import Key, Slot, slots_of
from scoring.bad_input import a_number, an_int
from scoring.timetable.doors import timetable

# What the core finds in a plan, in words; blocks and judges' days are named as they are printed.
WORDS = {
    "day-too-short": _("{block} finds no room on its judge's day: {minutes} minutes are asked."),
    "no-judge-day": _("{block} has no ring and day yet."),
    "conflict-overlap": _("One exhibitor has dogs in {blocks} at the same time."),
    "ring-shared": _("Two judges are in one ring at the same time: {blocks}."),
    "out-of-order": _("{blocks}: the second begins before the first is through."),
    "ring-overlap": _("{blocks} are planned for the same judge at the same time."),
    "pinned-outside-hours": _("{block} is planned outside the judge's hours."),
    "no-break": _("{judge_day}: no room for a break."),
}
Pair = tuple[str, str]
Blocks = Mapping[str, Slot]


@dataclass(frozen=True, slots=True)
class Hours:
    """Of every judge's day: times are "HH:MM", lengths minutes; no break where `rest` is 0.

    What a block takes is rounded up to `step`: a show that announces its times on the next five minutes has 5.
    """

    start: str = "09:00"
    end: str = "17:30"
    per_dog: float = 3.0
    gap: float = 2.0
    rest: float = 30.0
    rest_from: str = "11:30"
    rest_to: str = "14:00"
    step: int = 1


@dataclass(frozen=True, slots=True)
class Line:
    """A breed or a part of it at its time, or a judge's break."""

    day: str
    start: str
    end: str
    ring: str
    judge: str
    title: str
    dogs: int
    is_break: bool


@dataclass(frozen=True, slots=True)
class Planned:
    """The plan in the order of days, rings and hours; what is wrong with it; the times that are not kept yet."""

    lines: Sequence[Line]
    findings: Sequence[str]
    times: Mapping[Key, time]

    @property
    def breaks(self) -> list[str]:
        """Each judge's break in words."""
        told = gettext("{judge}, {day}, {start} to {end}")
        return [
            told.format(
                judge=one.judge or one.ring,
                day=date_format(date.fromisoformat(one.day), "MONTH_DAY_FORMAT"),
                start=one.start,
                end=one.end,
            )
            for one in self.lines
            if one.is_break
        ]


def plan_of(show: Show, hours: Hours, seconds: float = 3.0) -> Planned:
    """The timetable of the show as it is appointed now. `seconds` 0 asks for the plain method. Raises BadInput.

    Each day is planned by itself: nothing of one day stands in the way of another.
    """
    by_day: dict[date | None, dict[str, Slot]] = defaultdict(dict)
    for slot in slots_of(show):
        by_day[slot.part.appointed.day]["-".join(map(str, slot.key))] = slot
    of_days = [_plan_of_day(show, blocks, hours, seconds / len(by_day)) for blocks in by_day.values()]
    lines = sorted((line for one in of_days for line in one.lines), key=_by_ring_and_hour)
    findings = [words for one in of_days for words in one.findings]
    return Planned(lines, findings, {key: at for one in of_days for key, at in one.times.items()})


def _by_ring_and_hour(line: "Line") -> tuple[str, str, str, int]:
    return line.day, line.ring, line.start, line.dogs


def _plan_of_day(show: Show, blocks: Blocks, hours: Hours, seconds: float) -> Planned:
    conflicts = [list(pair) for pair in {**_of_one_owner(show, blocks), **_in_one_ring(blocks)}]
    answer = timetable({**_question(blocks, hours), "conflicts": conflicts, "seconds": seconds})
    days = {_judge_day(slot): slot for slot in blocks.values()}
    lines = [_line(blocks[one["block"]], one, blocks[one["block"]].title) for one in answer["blocks"]]
    lines += [_line(days[one["judge_day"]], one, gettext("Break"), is_break=True) for one in answer["breaks"]]
    placed = {blocks[one["block"]]: time.fromisoformat(one["start"]) for one in answer["blocks"]}
    times = {slot.key: at for slot, at in placed.items() if slot.at is None}
    return Planned(lines, [_words(one, blocks, days) for one in answer["findings"]], times)


def _line(slot: Slot, at: Mapping[str, str], title: str, is_break: bool = False) -> Line:
    told = slot.part.appointed
    assert told.day
    dogs = 0 if is_break else slot.dogs
    return Line(
        told.day.isoformat(), at["start"], at["end"], str(told.ring), str(told.judge or ""), title, dogs, is_break
    )


def _judge_day(slot: Slot) -> str:
    """A judge's day, in whichever rings; where the judge is not known yet, that of the ring. Nothing without both."""
    told = slot.part.appointed
    if not (told.day and told.ring):
        return ""
    return f"{told.day.isoformat()} {told.judge.pk if told.judge else f'ring {told.ring.pk}'}"


def _question(blocks: Blocks, hours: Hours) -> dict[str, Any]:
    rest = {"minutes": hours.rest, "from": hours.rest_from, "to": hours.rest_to} if hours.rest else None
    of_day = {"start": hours.start, "end": hours.end, "break": rest}
    days = sorted({_judge_day(slot) for slot in blocks.values()} - {""})
    step = an_int(hours.step, "step", 1, 60)
    return {
        "judge_days": [{"id": key, "day": key.partition(" ")[0], **of_day} for key in days],
        "blocks": [
            {
                "id": key,
                "dogs": _steps(slot, hours, step),
                "judge_days": [_judge_day(slot)] if _judge_day(slot) else [],
                "after": [other for other in blocks if _comes_after(slot, blocks[other])],
            }
            for key, slot in blocks.items()
        ],
        "pinned": [
            {"block": key, "judge_day": _judge_day(slot), "start": f"{slot.at:%H:%M}"}
            for key, slot in blocks.items()
            if slot.at and _judge_day(slot)
        ],
        # The core counts in dogs; here a dog is a step, so that every block ends on one.
        "minutes_per_dog": step,
        "gap_minutes": hours.gap,
    }


def _steps(slot: Slot, hours: Hours, step: int) -> int:
    """How many steps of the clock it takes. Best of breed of a divided breed takes as long as a dog."""
    per_dog = Decimal(repr(a_number(hours.per_dog, "minutes_per_dog", 0.1, 60)))
    return ceil(per_dog * max(slot.dogs, 1) / step)


def _comes_after(best: Slot, part: Slot) -> bool:
    """Whether the first is best of breed of what the second is a part of."""
    return not best.part.sex and bool(part.part.sex) and best.breed.pk == part.breed.pk


def _of_one_owner(show: Show, blocks: Blocks) -> dict[Pair, None]:
    """Blocks in which one owner has dogs on the same day, before two judges: whoever shows them cannot be in both."""
    entered = Entry.objects.filter(show=show, state=Entry.State.ENTERED)
    told = ("show_class_id", "show_class__show_breed_id", "show_class__sex", "show_class__code")
    of_class = {pk: _block_of(blocks, key) for pk, *key in entered.values_list(*told)}
    owned = Ownership.objects.filter(dog__entries__in=entered).order_by("person_id", "id")
    shown: dict[int, set[str]] = defaultdict(set)
    for person, class_id in owned.values_list("person_id", "dog__entries__show_class_id"):
        if of_class.get(class_id):
            shown[person].add(of_class[class_id])
    pairs = (pair for some in shown.values() for pair in _pairs(some))
    return {pair: None for pair in pairs if _at_odds(blocks[pair[0]], blocks[pair[1]])}


def _block_of(blocks: Blocks, key: Sequence[Any]) -> str:
    """The block of a class: its own, that of its sex, or that of the whole breed; nothing on another day."""
    breed, sex, code = key
    names = (f"{breed}-{sex}-{code}", f"{breed}-{sex}-", f"{breed}--")
    return next((name for name in names if name in blocks), "")


def _in_one_ring(blocks: Blocks) -> dict[Pair, None]:
    """Blocks of one ring and day before two judges."""
    return {pair: None for pair in _pairs(blocks) if _share_ring(blocks[pair[0]], blocks[pair[1]])}


def _pairs(keys: Iterable[str]) -> Iterator[Pair]:
    return combinations(sorted(keys), 2)


def _at_odds(one: Slot, other: Slot) -> bool:
    days = _judge_day(one), _judge_day(other)
    return all(days) and days[0] != days[1] and one.part.appointed.day == other.part.appointed.day


def _share_ring(one: Slot, other: Slot) -> bool:
    return _at_odds(one, other) and one.part.appointed.ring == other.part.appointed.ring


def _words(finding: Mapping[str, Any], blocks: Blocks, days: Mapping[str, Slot]) -> str:
    facts, code = dict(finding["facts"]), finding["code"]
    if "block" in facts:
        facts["block"] = blocks[facts["block"]].title
    if "blocks" in facts:
        pair = [blocks[key] for key in facts["blocks"]]
        code = "ring-shared" if code == "conflict-overlap" and _share_ring(*pair) else code
        facts["blocks"] = apart(slot.title for slot in pair)
    if isinstance(facts.get("judge_day"), str):
        told = days[facts["judge_day"]].part.appointed
        facts["judge_day"] = f"{told.judge or told.ring}, {date_format(told.day) if told.day else ''}"
    return gettext(WORDS[code]).format(**facts)
