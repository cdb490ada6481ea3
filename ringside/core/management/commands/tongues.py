"""Brings the translations' files up to what the site says now."""

from typing import Any

from django.core.management.base import BaseCommand

from ringside.core.tongues import renew


class Command(BaseCommand):
    help = "Write new messages into every language's django.po and take out those that nothing says any more."
    requires_system_checks = []

    def handle(self, *args: Any, **options: Any) -> None:
        for language, lacking in renew().items():
            self.stdout.write(f"{language}: {lacking} messages without words.")
