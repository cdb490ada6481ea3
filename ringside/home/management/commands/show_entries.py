"""Reads a club's file of entries, says what stands against each line, and takes those that may be taken."""

from argparse import ArgumentParser
from pathlib import Path
from typing import Any

from django.utils import timezone

from ringside.core.sentences import sentence
from ringside.entries import actions, queries
from ringside.entries.models import EntryFile, EntryLine
from ringside.home.management.shows import ShowCommand
from ringside.people.models import Account
from ringside.shows.models import Show
from scoring.findings import Finding


class Command(ShowCommand):
    help = "Read a file of entries (CSV or .xlsx) and say what is to be said of it; with --take, take the good lines."

    def add_arguments(self, parser: ArgumentParser) -> None:
        super().add_arguments(parser)
        parser.add_argument("file", type=Path)
        parser.add_argument("--take", action="store_true", help="make entries of every line that may be taken")
        parser.add_argument("--warnings", action="store_true", help="name the lines with a warning too")

    def do_in(self, show: Show, who: Account, told: dict[str, Any]) -> None:
        path, today = told["file"], timezone.localdate()
        file = actions.read_file(who=who, show=show, name=path.name, content=path.read_bytes(), today=today)
        taken = actions.take_lines(who=who, file=file, today=today) if told["take"] else 0
        actions.keep_current(file=file, today=today)
        counts = queries.counts_of(file)
        said = f"{taken} entries made. " if told["take"] else ""
        self.stdout.write(
            f"{said}Of {counts['all']} lines {counts['taken']} are taken, {counts['aside']} set aside, "
            f"{counts['good'] + counts['warned']} may be taken, {counts['refused']} are to be mended."
        )
        standings = ["refused", *(["warned"] if told["warnings"] else [])]
        for line in file.lines.filter(state=EntryLine.State.WAITING, standing__in=standings).order_by("line", "id"):
            self.stdout.write(f"Line {line.line}, {_name(file, line)}: {_words(line)}")


def _name(file: EntryFile, line: EntryLine) -> str:
    return queries.texts_of(line, file.columns).get("name") or "without a name"


def _words(line: EntryLine) -> str:
    said = [Finding(**one) for one in line.findings]
    return " ".join(dict.fromkeys(sentence(one) for one in said if one.severity != "notes"))
