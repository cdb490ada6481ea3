"""Lets an address start shows on this site: the first step of a new installation."""

from argparse import ArgumentParser
from typing import Any

from django.core.exceptions import ValidationError
from django.core.management.base import BaseCommand, CommandError
from django.core.validators import validate_email

from ringside.people.actions import account_for


class Command(BaseCommand):
    help = "Let an e-mail address start shows: manage.py first_account secretary@club.example"

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("email")

    def handle(self, *args: Any, **options: Any) -> None:
        try:
            validate_email(options["email"])
        except ValidationError:
            raise CommandError("This is not an e-mail address. Give one, such as secretary@club.example.") from None
        account = account_for(email=options["email"])
        account.runs_site = True
        account.save(update_fields=["runs_site"])
        self.stdout.write(f"{account.email} can sign in with a code and make shows.")
