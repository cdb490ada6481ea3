"""The programme of a timetable, read from one JSON object."""

from collections.abc import Mapping, Sequence
from datetime import date
from decimal import Decimal
from math import ceil
from re import fullmatch
from typing import Any

from scoring.bad_input import BadInput, a_list, a_number, a_string, an_int, an_object, join, one_of, value_of
from scoring.timetable.programme import DAY, Block, Break, JudgeDay, Pair, Programme, Slot

MOST_BLOCKS = 500
MOST_JUDGE_DAYS = 200
MOST_PAIRS = 20_000
MOST_DOGS = 10_000


def read_programme(source: Mapping[str, Any]) -> Programme:
    """Days count in the order of their dates or numbers, else in the order they are first named in."""
    judge_days = _read_judge_days(source)
    per_dog = _minutes(value_of(source, "minutes_per_dog"), "minutes_per_dog")
    if per_dog <= 0:
        raise BadInput("out-of-range", "A dog takes more than no time.", "minutes_per_dog")
    blocks = _read_blocks(source, per_dog, judge_days)
    return Programme(
        judge_days=judge_days,
        blocks=blocks,
        conflicts=_read_conflicts(source, blocks),
        pinned=_read_pinned(source, blocks, judge_days),
        gap=ceil(_minutes(value_of(source, "gap_minutes"), "gap_minutes")),
    )


def _minutes(value: Any, at: str) -> Decimal:
    """As written: 2.4 minutes for 25 dogs is an hour, which binary fractions would miss."""
    return Decimal(repr(a_number(value, at, 0, DAY)))


def _clock(value: Any, at: str) -> int:
    """Minutes since midnight of "HH:MM"."""
    text = a_string(value, at)
    if not fullmatch(r"[0-9]{2}:[0-9]{2}", text):
        raise BadInput("wrong-type", "Give a time of day as HH:MM, such as 09:30.", at)
    hours, minutes = int(text[:2]), int(text[3:])
    if minutes > 59 or hours * 60 + minutes > DAY:
        raise BadInput("out-of-range", "Give a time of day from 00:00 to 24:00.", at)
    return hours * 60 + minutes


def _read_judge_days(source: Mapping[str, Any]) -> dict[str, JudgeDay]:
    given = _objects(source, "judge_days", MOST_JUDGE_DAYS)
    labels = [_day_label(value_of(each, "day", at), join(at, "day")) for at, each in given]
    number = {label: i for i, label in enumerate(_in_order(labels))}
    found: dict[str, JudgeDay] = {}
    for (at, each), label in zip(given, labels, strict=True):
        judge_day = _read_judge_day(each, at, number[label] * DAY)
        if judge_day.id in found:
            raise BadInput("id-reused", "Give every judge's day an id of its own.", join(at, "id"))
        found[judge_day.id] = judge_day
    return found


def _day_label(value: Any, at: str) -> str | int:
    return value if isinstance(value, str) else an_int(value, at)


def _in_order(labels: Sequence[str | int]) -> list[str | int]:
    known = list(dict.fromkeys(labels))
    if all(isinstance(label, int) for label in known) or all(_is_date(label) for label in known):
        known.sort(key=lambda label: (label, "") if isinstance(label, int) else (0, label))
    return known


def _is_date(label: str | int) -> bool:
    try:
        return isinstance(label, str) and len(label) == 10 and bool(date.fromisoformat(label))
    except ValueError:
        return False


def _read_judge_day(source: Mapping[str, Any], at: str, midnight: int) -> JudgeDay:
    start, end = (_clock(value_of(source, key, at), join(at, key)) for key in ("start", "end"))
    if end <= start:
        raise BadInput("out-of-range", "The day must end after it starts.", join(at, "end"))
    rest = value_of(source, "break", at, default=None)
    return JudgeDay(
        id=a_string(value_of(source, "id", at), join(at, "id")),
        midnight=midnight,
        start=midnight + start,
        end=midnight + end,
        rest=None if rest is None else _read_break(an_object(rest, join(at, "break")), join(at, "break"), midnight),
    )


def _read_break(source: Mapping[str, Any], at: str, midnight: int) -> Break | None:
    earliest, latest = (_clock(value_of(source, key, at), join(at, key)) for key in ("from", "to"))
    minutes = ceil(_minutes(value_of(source, "minutes", at), join(at, "minutes")))
    if minutes > latest - earliest:
        raise BadInput("out-of-range", "The break does not fit between its times.", join(at, "minutes"))
    return Break(midnight + earliest, midnight + latest, minutes) if minutes else None


def _read_blocks(source: Mapping[str, Any], per_dog: Decimal, judge_days: Mapping[str, JudgeDay]) -> dict[str, Block]:
    found: dict[str, Block] = {}
    given = _objects(source, "blocks", MOST_BLOCKS)
    for at, each in given:
        block = _read_block(each, at, per_dog, judge_days)
        if block.id in found:
            raise BadInput("id-reused", "Give every block an id of its own.", join(at, "id"))
        found[block.id] = block
    for (at, _), block in zip(given, found.values(), strict=True):
        for i, earlier in enumerate(block.after):
            one_of(earlier, found, join(join(at, "after"), i))
    _refuse_circles(found)
    return found


def _read_block(source: Mapping[str, Any], at: str, per_dog: Decimal, judge_days: Mapping[str, JudgeDay]) -> Block:
    dogs = an_int(value_of(source, "dogs", at), join(at, "dogs"), 0, MOST_DOGS)
    here = join(at, "judge_days")
    choices = [
        one_of(e, judge_days, join(here, i)) for i, e in enumerate(a_list(value_of(source, "judge_days", at), here))
    ]
    there = join(at, "after")
    after = [
        a_string(e, join(there, i)) for i, e in enumerate(a_list(value_of(source, "after", at, default=[]), there))
    ]
    return Block(
        id=a_string(value_of(source, "id", at), join(at, "id")),
        dogs=dogs,
        minutes=ceil(per_dog * dogs),
        judge_days=tuple(dict.fromkeys(choices)),
        after=tuple(dict.fromkeys(after)),
    )


def _refuse_circles(blocks: Mapping[str, Block]) -> None:
    """Blocks that wait for one another in a circle can never start."""
    waiting = dict(blocks)
    while waiting:
        ready = [block.id for block in waiting.values() if not any(earlier in waiting for earlier in block.after)]
        if not ready:
            raise BadInput("out-of-range", f'Block "{next(iter(waiting))[:60]}" waits for itself.', "blocks")
        for block in ready:
            del waiting[block]


def _read_conflicts(source: Mapping[str, Any], blocks: Mapping[str, Block]) -> tuple[Pair, ...]:
    """Each pair once, whichever way round it was given first."""
    found: dict[frozenset[str], Pair] = {}
    for i, given in enumerate(a_list(value_of(source, "conflicts"), "conflicts", MOST_PAIRS)):
        at = join("conflicts", i)
        pair = a_list(given, at)
        if len(pair) != 2:
            raise BadInput("out-of-range", "Give two blocks.", at)
        one, other = (one_of(block, blocks, join(at, j)) for j, block in enumerate(pair))
        found.setdefault(frozenset((one, other)), (one, other))
    return tuple(found.values())


def _read_pinned(
    source: Mapping[str, Any], blocks: Mapping[str, Block], judge_days: Mapping[str, JudgeDay]
) -> dict[str, Slot]:
    found: dict[str, Slot] = {}
    for at, each in _objects(source, "pinned", MOST_BLOCKS, default=[]):
        block = blocks[one_of(value_of(each, "block", at), blocks, join(at, "block"))]
        judge_day = judge_days[one_of(value_of(each, "judge_day", at), judge_days, join(at, "judge_day"))]
        start = judge_day.midnight + _clock(value_of(each, "start", at), join(at, "start"))
        if block.id in found:
            raise BadInput("id-reused", "A block can be pinned once.", join(at, "block"))
        found[block.id] = Slot(block.id, judge_day.id, start, start + block.minutes)
    return found


def _objects(source: Mapping[str, Any], key: str, most: int, **default: Any) -> list[tuple[str, Mapping[str, Any]]]:
    given = a_list(value_of(source, key, **default), key, most)
    return [(join(key, i), an_object(each, join(key, i))) for i, each in enumerate(given)]
