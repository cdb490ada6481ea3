"""Inside a site: its commands, and the actions behind the office's pages that have no command, asked line by line."""

import io
import json
import sys
from collections.abc import Callable, Mapping
from typing import Any

from django.core.management import CommandError, call_command
from django.utils import timezone

from ringside.entries import actions as entries
from ringside.entries import waiting
from ringside.entries.models import Entry, EntryFile
from ringside.people.models import Account
from ringside.results import final_actions
from ringside.results.awards import awards_of, breeds_of
from ringside.results.day_actions import withdraw_entry
from ringside.results.finals import finals_of
from ringside.results.models import Final
from ringside.results.moves import withdrawals_for
from ringside.ring.models import Pairing
from ringside.ring.pairing import make_code
from ringside.shows.models import Show
from tests.home.big_show.chair import ANSWER

Told = Mapping[str, Any]


def mend(show: Show, who: Account, told: Told) -> object:
    """Mends the lines named, sets the others aside; by the numbers that a spreadsheet shows."""
    file, today = EntryFile.objects.get(show=show), timezone.localdate()
    for number, texts in told["mends"].items():
        line = file.lines.get(line=int(number))
        entries.mend_line(who=who, line=line, texts=texts, today=today)
    entries.set_aside(who=who, file=file, numbers=told["aside"], today=today)
    return len(told["mends"])


def late(show: Show, who: Account, told: Told) -> object:
    """Late entries, typed in and put aside, each decided with its reason; how many were accepted."""
    today, accepted = timezone.localdate(), 0
    for one in told["entries"]:
        texts = {name: text for name, text in one["texts"].items() if name != "class"}
        request = waiting.put_aside(
            who=who,
            show=show,
            texts=texts,
            classes=[one["texts"]["class"].replace(" ", "-")],
            why="came late by letter",
        )
        if one["accept"]:
            accepted += len(waiting.accept(who=who, request=request, reason="Posted in time.", today=today))
        else:
            waiting.refuse(who=who, request=request, reason="Entries had closed.")
    return accepted


def withdraw(show: Show, who: Account, told: Told) -> object:
    """Withdraws these numbers for the first reason that the rules allow; the numbers that were."""
    gone = []
    for entry in Entry.objects.filter(show=show, number__in=told["numbers"]).order_by("number"):
        reasons = withdrawals_for(show, entry.dog.sex)
        if reasons:
            withdraw_entry(who=who, entry=entry, reason=next(iter(reasons)))
            gone.append(entry.number)
    return gone


def codes(show: Show, who: Account, told: Told) -> object:
    """A judge's pairing code for each ring."""
    kind, day = Pairing.Kind.JUDGE, show.first_day
    return {ring.pk: make_code(who=who, ring=ring, kind=kind, day=day) for ring in show.rings.order_by("id")}


def findings(show: Show, who: Account, told: Told) -> object:
    """What the desk says of the awards of each breed that do not go with the rules."""
    return {one.title: one.card.findings for one in awards_of(breeds_of(show)) if one.card.findings}


def hold(show: Show, who: Account, told: Told) -> object:
    """Holds every final, names a judge for each; award and group of each."""
    final_actions.hold_finals(who=who, show=show)
    rows = list(Final.objects.filter(show=show).order_by("id"))
    for final in rows:
        name = f"Judge of {final.award} {final.group}".strip()
        final_actions.name_judge(who=who, final=final, name=name, email="")
    return [[final.award, final.group] for final in rows]


def finals(show: Show, who: Account, told: Told) -> object:
    """Records each final as its judge signed it; who competed in it as the desk saw it then, and its findings."""
    seen = []
    for award, group, places in told["finals"]:
        final = Final.objects.get(show=show, award=award, group=group)
        before = final_actions.stands_of(final)
        competing = sorted(one.entry.number or 0 for one in before.competing)
        after = final_actions.record_final(who=who, final=final, places=places, absent=[], is_signed=True)
        seen.append([award, group, competing, list(after.findings)])
    assert len(seen) == len(finals_of(show).rows)
    return seen


DOINGS: dict[str, Callable[[Show, Account, Told], object]] = {
    one.__name__: one for one in (mend, late, withdraw, codes, findings, hold, finals)
}


def sit() -> None:
    """Answers each question, a line of JSON, with a line of its own that begins as ANSWER says."""
    for line in sys.stdin:
        told = json.loads(line)
        try:
            said = {"said": command(*told["command"]) if "command" in told else action(told)}
        except CommandError as refused:
            said = {"refused": str(refused)}
        sys.stdout.write(f"{ANSWER}{json.dumps(said)}\n")
        sys.stdout.flush()


def command(name: str, *arguments: str) -> str:
    target = io.StringIO()
    call_command(name, *arguments, stdout=target)
    return target.getvalue()


def action(told: Told) -> object:
    show, who = Show.objects.get(slug=told["slug"]), Account.objects.get(email=told["by"])
    return DOINGS[told["doing"]](show, who, told)
