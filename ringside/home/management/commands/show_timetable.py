"""Plans the hours of a show: which judge takes which breed when."""

from argparse import ArgumentParser
from dataclasses import fields
from itertools import groupby
from typing import Any

from django.core.management.base import CommandError

from ringside.home.management.shows import ShowCommand
from ringside.people.models import Account
from ringside.shows.access import require
from ringside.shows.models import Show
from ringside.timetable.actions import plan_times
from ringside.timetable.planning import Hours, plan_of
from scoring.bad_input import BadInput


class Command(ShowCommand):
    help = (
        "Plan when each judge judges what, from the entries and the appointments as they are now. What the plan cannot "
        "keep is said: dogs without room, one exhibitor before two judges at once, a judge without a break. Times that "
        "the office has planned stay; --keep writes the others down beside them."
    )

    def add_arguments(self, parser: ArgumentParser) -> None:
        super().add_arguments(parser)
        for one in fields(Hours):
            parser.add_argument(f"--{one.name.replace('_', '-')}", type=type(one.default), default=one.default)
        parser.add_argument("--seconds", type=float, default=3.0, help="how long to search; 0 takes the first plan")
        parser.add_argument("--keep", action="store_true", help="write the times down, for letters and calendar")

    def do_in(self, show: Show, who: Account, told: dict[str, Any]) -> None:
        require(who, show, "see-office")
        hours = Hours(**{one.name: told[one.name] for one in fields(Hours)})
        try:
            found = plan_of(show, hours, told["seconds"])
        except BadInput as error:
            raise CommandError(error.message) from None
        for (day, ring, judge), lines in groupby(found.lines, key=lambda line: (line.day, line.ring, line.judge)):
            self.stdout.write(f"{day}  {ring}  {judge}")
            for line in lines:
                dogs = f" ({line.dogs})" if line.dogs else ""
                self.stdout.write(f"  {line.start}-{line.end}  {line.title}{dogs}")
        for words in found.findings:
            self.stdout.write(words)
        if told["keep"]:
            kept = plan_times(who=who, show=show, times=found.times)
            self.stdout.write(f"{kept} times written down.")
