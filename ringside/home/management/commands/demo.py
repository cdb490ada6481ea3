"""Builds the demo show where it is not there yet, and prints its addresses."""

from argparse import ArgumentParser
from typing import Any

from django.conf import settings
from django.core.management.base import BaseCommand, CommandError

from ringside.home import demo


class Command(BaseCommand):
    help = "Build the demo show and print its addresses."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("--host", default="127.0.0.1")
        parser.add_argument("--port", default="8000")

    def handle(self, *args: Any, **options: Any) -> None:
        if not settings.DEMO:
            raise CommandError("The demo show is only built where DEMO=1 is set; it does not belong into a real show.")
        made = demo.build()
        address = f"http://{options['host']}:{options['port']}"
        self.stdout.write("The demo show is built." if made else "The demo show is here already; nothing was changed.")
        self.stdout.write(f"Front page, with a door each for judge, secretary and exhibitor: {address}/")
