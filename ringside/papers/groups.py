"""Braces, breeders' and progeny groups and junior handling on paper: in the catalogue, and as a sheet for the steward.

They have no ring of their own, so their sheet follows those of the rings. It carries numbers only, as all that is
printed for a ring.
"""

from collections.abc import Iterator
from itertools import groupby
from typing import Any

from django.utils.translation import gettext, pgettext_lazy
from django.utils.translation import gettext_lazy as _
from reportlab.platypus import Paragraph, Spacer
from reportlab.platypus.flowables import Flowable, PageBreak

from ringside.entries.models import Entry
from ringside.entries.together.queries import groups_of
from ringside.papers.programme import GroupLine, GroupList, Programme
from ringside.papers.tables import (
    BIG_NUMBER,
    CLASS,
    GROUP,
    NAME,
    SectionHeading,
    ruled,
    text,
    together,
)
from ringside.shows.books import rules_of
from ringside.shows.models import Show

COLUMNS = (
    _("Dogs' numbers"),
    pgettext_lazy("box", "Present"),
    pgettext_lazy("result", "Place"),
    _("What the judge says"),
)
SHARES = (0.34, 0.12, 0.12, 0.42)


def title_of_groups() -> str:
    return gettext("Braces, groups and junior handling")


def groups_on_paper(show: Show) -> tuple[GroupList, ...]:
    """What stands entered beside the classes, by competition in the rules' order, by name within one."""
    order = {one.code: at for at, one in enumerate(rules_of(show).competitions)}
    standing = [(one, title) for one, title in groups_of(show) if one.withdrawn_at is None]
    standing.sort(key=lambda pair: order.get(pair[0].code, len(order)))
    return tuple(
        GroupList(title, tuple(sorted((_line(one) for one, _title in some), key=lambda line: line.name.casefold())))
        for title, some in groupby(standing, key=lambda pair: pair[1])
    )


def _line(group: Any) -> GroupLine:
    there = [entry for entry in group.members.all() if entry.state == Entry.State.ENTERED]
    return GroupLine(group.name, tuple((str(entry.number or "–"), entry.dog.name) for entry in there))


def groups_in_catalogue(programme: Programme, width: float) -> Iterator[Flowable]:
    if not programme.groups:
        return
    yield PageBreak()
    yield SectionHeading(title_of_groups(), GROUP)
    for one in programme.groups:
        rows = [[text(line.name, NAME), _dogs(line)] for line in one.entered]
        lines = sum(max(1, len(line.dogs)) for line in one.entered)
        yield from together([text(one.title, CLASS)], ruled(rows, [width * 0.4, width * 0.6], heads=0), lines)


def _dogs(line: GroupLine) -> list[Paragraph]:
    """The dogs one below another, each number before its name."""
    return [text(f"{number}  {name}") for number, name in line.dogs]


def group_sheets(programme: Programme, width: float) -> Iterator[Flowable]:
    yield Spacer(1, 6)
    yield SectionHeading(title_of_groups(), GROUP)
    head = [text(str(word)) for word in COLUMNS]
    for one in programme.groups:
        called = sorted(one.entered, key=lambda line: [number.zfill(9) for number, _ in line.dogs])
        rows = [[text(" + ".join(number for number, _ in line.dogs), BIG_NUMBER), "", "", ""] for line in called]
        table = ruled([head, *rows], [share * width for share in SHARES], boxed=True)
        yield from together([text(one.title, CLASS)], table, len(rows))
