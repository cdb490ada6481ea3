"""Brings a deployment's database, cache table and static files up to date; safe to run again."""

from typing import Any

from django.core.management import call_command
from django.core.management.base import BaseCommand


class Command(BaseCommand):
    help = "Migrate the database, make the cache table, collect the static files."

    def handle(self, *args: Any, **options: Any) -> None:
        call_command("migrate", verbosity=0, interactive=False)
        call_command("createcachetable", verbosity=0)
        call_command("collectstatic", verbosity=0, interactive=False, clear=False)
        self.stdout.write("Database, cache table and static files are up to date.")
