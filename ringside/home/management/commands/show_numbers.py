"""Gives the entries of a show their catalogue numbers."""

from typing import Any

from ringside.entries.models import Entry
from ringside.entries.numbering import number_entries
from ringside.home.management.shows import ShowCommand
from ringside.people.models import Account
from ringside.shows.models import Show


class Command(ShowCommand):
    help = "Give every entry without one its dog's catalogue number; numbers given stay."

    def do_in(self, show: Show, who: Account, told: dict[str, Any]) -> None:
        given = number_entries(who=who, show=show)
        last = Entry.objects.filter(show=show).order_by("-number").values_list("number", flat=True)
        self.stdout.write(f"{given} entries have their number now; the last is {last.exclude(number=None).first()}.")
