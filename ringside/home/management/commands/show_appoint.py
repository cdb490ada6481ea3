"""Gives breeds and parts of them their judges, rings and days from a file, all of it or nothing."""

from argparse import ArgumentParser
from pathlib import Path
from typing import Any

from django.core.management.base import CommandError
from django.db import transaction

from ringside.core.sentences import sentence
from ringside.home.management.shows import ShowCommand, rows_of, wrong_in
from ringside.people.models import Account
from ringside.shows.actions import appoint
from ringside.shows.appointing import appoint_part
from ringside.shows.conflicts import findings_on_judges
from ringside.shows.forms import BreedForm, PartForm
from ringside.shows.models import Show, ShowBreed
from scoring.standards import loader as standards
from scoring.standards.names import by_name

COLUMNS = ("breed", "variety", "part", "judge", "email", "ring", "day")
NEEDED = ("breed", "judge", "email", "ring", "day")


class Command(ShowCommand):
    help = (
        "Appoint the judges from a CSV file with the columns breed, variety, part, judge, email, ring, day. `part` is "
        'empty for the whole breed, otherwise "dogs", "bitches" or "dogs open"; days are YYYY-MM-DD.'
    )

    def add_arguments(self, parser: ArgumentParser) -> None:
        super().add_arguments(parser)
        parser.add_argument("file", type=Path)

    def do_in(self, show: Show, who: Account, told: dict[str, Any]) -> None:
        rows = list(rows_of(told["file"].read_bytes()))
        missing = [name for name in NEEDED if not rows or name not in rows[0][1]]
        if missing:
            raise CommandError(f"This file has no column {', '.join(missing)}. The columns: {', '.join(COLUMNS)}.")
        wrong: list[str] = []
        with transaction.atomic():
            for line, row in rows:
                problem = _appoint(show, who, row)
                wrong += [f"Line {line}: {problem}"] if problem else []
            if wrong:
                raise CommandError("\n".join([*wrong, "Nothing was appointed."]))
        self.stdout.write(f"{len(rows)} appointments for {show}.")
        for finding in findings_on_judges(show):
            self.stdout.write(f"  {sentence(finding)}")


def _appoint(show: Show, who: Account, row: dict[str, str]) -> str:
    """What is wrong with the row; nothing where it was done."""
    standard = by_name(row["breed"]) if row["breed"] else None
    if standard is None:
        return f"There is no standard of a breed {row['breed'] or 'without a name'} here."
    variety = row.get("variety", "")
    if variety not in {"", *(one.code for one in standards.load(standard.code).varieties)}:
        return f"{standard.name} has no variety {variety}."
    given = {"judge_name": row["judge"], "judge_email": row["email"], "ring": row["ring"], "day": row["day"]}
    if not row.get("part"):
        form = BreedForm({**given, "breed": f"{standard.code}:{variety}".removesuffix(":")}, show=show)
        if form.is_valid():
            appoint(who=who, show=show, **form.cleaned_data)
        return wrong_in(form)
    breed = ShowBreed.objects.filter(show=show, breed=standard.code, variety=variety).first()
    if breed is None:
        return "Appoint the whole breed in a line before its parts."
    part = PartForm({**given, "part": _part(row["part"])}, show=show)
    if part.is_valid():
        appoint_part(who=who, show_breed=breed, **part.told())
    return wrong_in(part)


def _part(words: str) -> str:
    """ "dogs" is "dog:", "bitches open" is "bitch:open", "best of breed" is ":"."""
    if words.lower() == "best of breed":
        return ":"
    sex, _, code = words.lower().partition(" ")
    return f"{ {'dogs': 'dog', 'bitches': 'bitch'}.get(sex, sex) }:{code.strip().replace(' ', '-')}"
