"""Takes in the file of a show that another site wrote."""

from argparse import ArgumentParser
from pathlib import Path
from typing import Any

from django.core.management.base import BaseCommand, CommandError

from ringside.home.whole.into import read_show
from ringside.home.whole.reading import NotTakenIn


class Command(BaseCommand):
    help = "Take in everything of one show from a file that `show_out` wrote: all of it, or nothing."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("file", type=Path)

    def handle(self, *args: Any, **options: Any) -> None:
        try:
            show = read_show(options["file"])
        except (NotTakenIn, OSError) as error:
            raise CommandError(str(error)) from None
        self.stdout.write(f"{show} is here, with {show.entries.count():,} entries. Print its number cards again.")
