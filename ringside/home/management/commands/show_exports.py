"""Writes everything that other programs read of a show into a folder."""

import json
from argparse import ArgumentParser
from pathlib import Path
from typing import Any

from django.utils import timezone, translation

from ringside.entries.lists import Asked, written
from ringside.home.management.shows import ShowCommand, new_folder
from ringside.people.models import Account
from ringside.results import out
from ringside.results.out_awards import awards_table
from ringside.results.schedule import schedule_of
from ringside.shows.access import require
from ringside.shows.models import Show


class Command(ShowCommand):
    help = "Write results, awards, entries (CSV, Excel, JSON with its schema) and the schedule into a new folder."

    def add_arguments(self, parser: ArgumentParser) -> None:
        super().add_arguments(parser)
        parser.add_argument("folder", type=Path)

    def do_in(self, show: Show, who: Account, told: dict[str, Any]) -> None:
        require(who, show, "take-entries")
        with new_folder(told["folder"]) as folder, translation.override("en"):
            for kind in ("csv", "xlsx"):
                (folder / f"entries.{kind}").write_bytes(written(show, Asked(), kind))
                (folder / f"results.{kind}").write_bytes(out.results_table(show, kind))
                (folder / f"awards.{kind}").write_bytes(awards_table(show, kind))
            for name, content in (("results", out.results_json(show)), ("entries", out.entries_json(show))):
                (folder / f"{name}.json").write_text(json.dumps(content, ensure_ascii=False), encoding="utf-8")
                (folder / f"{name}.schema.json").write_text(json.dumps(out.schema(name)), encoding="utf-8")
            (folder / "schedule.ics").write_bytes(schedule_of(show, timezone.now()))
            names = sorted(file.name for file in folder.iterdir())
        self.stdout.write(f"{told['folder']} holds {', '.join(names)}. Owners' addresses are among them: keep it safe.")
