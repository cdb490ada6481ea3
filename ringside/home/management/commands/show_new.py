"""Starts a show, as the page for a new one does."""

from argparse import ArgumentParser
from typing import Any

from django.core.management.base import CommandError

from ringside.home.management.shows import OfficeCommand, wrong_in
from ringside.people.models import Account
from ringside.shows.actions import start_show
from ringside.shows.forms import ShowForm


class Command(OfficeCommand):
    help = "Start a show; whoever starts it owns it and is its secretary. Prints the show's name in its address."

    def add_arguments(self, parser: ArgumentParser) -> None:
        super().add_arguments(parser)
        parser.add_argument("name")
        parser.add_argument("--place", default="")
        parser.add_argument("--rules", required=True, help="code of the governing body")
        parser.add_argument("--overlays", nargs="*", default=[], help="codes of a national member or club")
        for day in ("first-day", "last-day"):
            parser.add_argument(f"--{day}", required=True, metavar="YYYY-MM-DD")
        for day in ("entries-open", "entries-close"):
            parser.add_argument(f"--{day}", metavar="YYYY-MM-DD")
        parser.add_argument("--critiques-public", action="store_true", help="everybody may read published critiques")

    def do(self, who: Account, told: dict[str, Any]) -> None:
        form = ShowForm({name: told[name] for name in ShowForm.base_fields})
        if not form.is_valid():
            raise CommandError(wrong_in(form))
        self.stdout.write(start_show(who=who, **form.cleaned_data).slug)
