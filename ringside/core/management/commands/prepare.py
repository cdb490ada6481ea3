"""Brings a deployment's database, cache table, static files and translations up to date; safe to run again."""

from typing import Any

from django.core.management import call_command
from django.core.management.base import BaseCommand

from ringside.core.tongues import compile_all


class Command(BaseCommand):
    help = "Migrate the database, make the cache table, collect the static files, compile the translations."

    def handle(self, *args: Any, **options: Any) -> None:
        call_command("migrate", verbosity=0, interactive=False)
        call_command("createcachetable", verbosity=0)
        call_command("collectstatic", verbosity=0, interactive=False, clear=False)
        compile_all()
        self.stdout.write("Database, cache table, static files and translations are up to date.")
