"""Serves the site with granian: browsers' silent sockets do not stall it, tablets' saves stay quick."""

import os
import sys
from argparse import ArgumentParser
from typing import Any

from django.conf import settings
from django.core.management.base import BaseCommand


class Command(BaseCommand):
    help = "Serve the site on --host and --port."
    requires_system_checks: list[str] = []  # `prepare` has run them; a restart in the middle of a show is to be quick

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("--host", default="127.0.0.1")
        parser.add_argument("--port", type=int, default=8000)
        parser.add_argument("--workers", type=int, default=2)

    def handle(self, *args: Any, **options: Any) -> None:
        address = f"http://{options['host']}:{options['port']}/"
        self.stdout.write(f"Serving on {address} (stop with Ctrl-C)")
        if settings.FIELD:
            self.stdout.write("FIELD=1: plain HTTP. Whoever is on this network can read along.")
        self.stdout.flush()
        # A worker may hang on a browser's open connection: it is ended then. What it answered is on the disk.
        command = [
            sys.executable, "-m", "granian", "--interface", "wsgi", "--no-access-log", "--log-level", "warning",
            "--host", options["host"], "--port", str(options["port"]),
            "--workers", str(options["workers"]), "--blocking-threads", "2", "--workers-kill-timeout", "20",
            "ringside.wsgi:application",
        ]  # fmt: skip
        os.chdir(settings.BASE)
        os.execv(sys.executable, command)
