"""Copies the database and the kept files while the show runs."""

from argparse import ArgumentParser
from pathlib import Path
from typing import Any

from django.conf import settings
from django.core.management.base import BaseCommand, CommandError
from django.db import connection

from ringside.core.backup import BackupFailed
from ringside.core.keeping import keep_all


class Command(BaseCommand):
    help = "Write a whole copy of the database, photos and papers to a file; safe while the site is served."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("file", type=Path)

    def handle(self, *args: Any, **options: Any) -> None:
        try:
            done = keep_all(connection.settings_dict, Path(settings.MEDIA_ROOT), options["file"])
        except (BackupFailed, OSError) as error:
            raise CommandError(str(error)) from None
        self.stdout.write(
            f"{done} holds the whole database and all kept files, {done.stat().st_size:,} bytes. "
            "Keep it on another disk."
        )
