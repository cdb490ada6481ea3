"""Forgets the addresses of people who have had nothing to do with a show for a long time; for once a day."""

from typing import Any

from django.conf import settings
from django.core.management.base import BaseCommand
from django.utils import timezone

from ringside.home.forgetting import forget_old_contacts


class Command(BaseCommand):
    help = "Delete addresses, accounts and photos of people without a show for CONTACTS_KEPT_DAYS days; results stay."

    def handle(self, *args: Any, **options: Any) -> None:
        days = settings.CONTACTS_KEPT_DAYS
        gone = forget_old_contacts(days=days, today=timezone.localdate())
        self.stdout.write(f"{gone} address{'es' if gone != 1 else ''} without a show for {days} days deleted.")
