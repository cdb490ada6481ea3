"""Writes everything of one show to a file that another site takes in."""

import json
from argparse import ArgumentParser
from pathlib import Path
from typing import Any

from django.core.management.base import BaseCommand, CommandError

from ringside.core.backup import written_whole
from ringside.home.whole.out import write_show
from ringside.home.whole.schema import schema
from ringside.shows.models import Show


class Command(BaseCommand):
    help = "Write everything of one show, photos included, to a ZIP file that `show_in` takes in elsewhere."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("slug", nargs="?", help="the show's name in its address")
        parser.add_argument("file", nargs="?", type=Path)
        parser.add_argument("--schema", action="store_true", help="print the JSON schema of the file's show.json")

    def handle(self, *args: Any, **options: Any) -> None:
        if options["schema"]:
            self.stdout.write(json.dumps(schema(), indent=2))
            return
        show, target = Show.objects.filter(slug=options["slug"]).first(), options["file"]
        if show is None or target is None:
            known = ", ".join(Show.objects.order_by("slug").values_list("slug", flat=True))
            raise CommandError(f"Name a show and a file. The shows here: {known or 'none'}.")
        if target.exists():
            raise CommandError(f"{target} is there already; nothing was overwritten.")
        try:
            with written_whole(target) as unfinished, unfinished.open("wb") as file:
                write_show(show, file)
        except OSError as error:
            raise CommandError(str(error)) from None
        self.stdout.write(f"{target} holds the whole of {show}, addresses and reports included: keep it safe.")
