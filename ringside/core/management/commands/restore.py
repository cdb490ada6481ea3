"""Brings a copy of database and kept files back into empty places."""

from argparse import ArgumentParser
from pathlib import Path
from typing import Any

from django.conf import settings
from django.core.management.base import BaseCommand, CommandError
from django.db import connection

from ringside.core.backup import BackupFailed
from ringside.core.keeping import bring_all_back


class Command(BaseCommand):
    help = "Bring back what `backup` wrote; database and media folder must be empty. Stop the site first."
    requires_system_checks = []

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("file", type=Path)

    def handle(self, *args: Any, **options: Any) -> None:
        connection.close()
        try:
            files = bring_all_back(connection.settings_dict, Path(settings.MEDIA_ROOT), options["file"])
        except (BackupFailed, OSError) as error:
            raise CommandError(str(error)) from None
        self.stdout.write(f"{options['file']} is back in place with {files:,} files. Start the site again.")
