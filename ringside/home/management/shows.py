"""What the commands on a show share: who does it, on which show, refusals in one sentence, files written as a whole."""

import csv
import io
from argparse import ArgumentParser
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from django.core.exceptions import ValidationError
from django.core.management.base import BaseCommand, CommandError
from django.forms import BaseForm
from django.http import Http404

from ringside.core.denied import Denied
from ringside.core.sentences import sentence
from ringside.entries.reading import NotReadable
from ringside.entries.reading.encodings import decode
from ringside.people.models import Account
from ringside.shows.models import Show


class OfficeCommand(BaseCommand):
    """Done by somebody with an account here, whose rights are those of the pages."""

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("--by", required=True, metavar="EMAIL", help="who does it, with the rights of that account")

    def handle(self, *args: Any, **options: Any) -> None:
        with refusals():
            self.do(self.account(options["by"]), options)

    def account(self, email: str) -> Account:
        found = Account.objects.filter(email__iexact=email.strip()).first()
        if found is None:
            raise CommandError(f"{email} has no account here. Name somebody who works in the show's office.")
        return found

    def do(self, who: Account, told: dict[str, Any]) -> None:
        raise NotImplementedError


class ShowCommand(OfficeCommand):
    """The same on one show that is here."""

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("slug", help="the show's name in its address")
        super().add_arguments(parser)

    def do(self, who: Account, told: dict[str, Any]) -> None:
        show = Show.objects.filter(slug=told["slug"]).first()
        if show is None:
            known = ", ".join(Show.objects.order_by("slug").values_list("slug", flat=True))
            raise CommandError(f"There is no show {told['slug']} here. The shows here: {known or 'none'}.")
        self.do_in(show, who, told)

    def do_in(self, show: Show, who: Account, told: dict[str, Any]) -> None:
        raise NotImplementedError


@contextmanager
def refusals() -> Iterator[None]:
    """What an action refuses ends the command with the sentence that a page would show."""
    try:
        yield
    except Denied as denied:
        raise CommandError(denied.reason) from None
    except Http404:
        raise CommandError("This account has no role in the show. Give it one on the show's page.") from None
    except NotReadable as problem:
        raise CommandError(sentence(problem.finding)) from None
    except ValidationError as error:
        raise CommandError(" ".join(error.messages)) from None
    except OSError as error:
        raise CommandError(str(error)) from None


def wrong_in(form: BaseForm) -> str:
    """What a form refuses, field by field."""
    return " ".join(
        f"{form[name].label if name in form.fields else ''}: {' '.join(map(str, errors))}".removeprefix(": ")
        for name, errors in form.errors.items()
    )


def rows_of(content: bytes) -> Iterator[tuple[int, dict[str, str]]]:
    """The rows of a CSV file by their headings, each with its line, whichever of the usual separators it has."""
    text, _ = decode(content, "")
    delimiter = max(";,\t", key=text.partition("\n")[0].count)
    reader = csv.DictReader(io.StringIO(text, newline=""), delimiter=delimiter, restval="")
    for row in reader:
        cells = {(name or "").strip().lower(): (cell or "").strip() for name, cell in row.items() if name is not None}
        if any(cells.values()):
            yield reader.line_num, cells


@contextmanager
def new_folder(target: Path) -> Iterator[Path]:
    """A folder that is there once everything is in it; nothing is written over."""
    if target.exists():
        raise CommandError(f"{target} is there already; nothing was overwritten.")
    unfinished = target.with_name(f".{target.name}.unfinished")
    unfinished.mkdir(parents=True)
    try:
        yield unfinished
        unfinished.rename(target)
    finally:
        if unfinished.exists():
            for file in unfinished.iterdir():
                file.unlink()
            unfinished.rmdir()
