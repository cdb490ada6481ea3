"""Copies the database while the show runs."""

from argparse import ArgumentParser
from pathlib import Path
from typing import Any

from django.core.management.base import BaseCommand, CommandError
from django.db import connection

from ringside.core.backup import BackupFailed, save


class Command(BaseCommand):
    help = "Write a whole copy of the database to a file; safe while the site is served."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("file", type=Path)

    def handle(self, *args: Any, **options: Any) -> None:
        try:
            done = save(connection.settings_dict, options["file"])
        except (BackupFailed, OSError) as error:
            raise CommandError(str(error)) from None
        self.stdout.write(f"{done} holds the whole database, {done.stat().st_size:,} bytes. Keep it on another disk.")
