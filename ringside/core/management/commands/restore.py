"""Brings a copy of the database back into an empty place."""

from argparse import ArgumentParser
from pathlib import Path
from typing import Any

from django.core.management.base import BaseCommand, CommandError
from django.db import connection

from ringside.core.backup import BackupFailed, bring_back


class Command(BaseCommand):
    help = "Bring back a copy that `backup` wrote; the database must be empty. Stop the site first."
    requires_system_checks = []

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("file", type=Path)

    def handle(self, *args: Any, **options: Any) -> None:
        connection.close()
        try:
            bring_back(connection.settings_dict, options["file"])
        except (BackupFailed, OSError) as error:
            raise CommandError(str(error)) from None
        self.stdout.write(f"{options['file']} is back in place. Start the site again.")
