"""Prints every paper of a show into a folder."""

import shutil
from argparse import ArgumentParser
from pathlib import Path
from typing import Any

from django.urls import reverse
from django.utils import translation

from ringside.core.denied import NotNow
from ringside.home.management.shows import ShowCommand, new_folder
from ringside.home.number_cards import number_cards
from ringside.papers import runs
from ringside.papers.desk_views import PAPERS
from ringside.papers.gathering import programme_of
from ringside.papers.models import PaperRun
from ringside.papers.styles import SIZES
from ringside.people.models import Account, Language
from ringside.shows.access import require
from ringside.shows.models import Show


class Command(ShowCommand):
    help = "Print the office's papers, the number cards and all published critiques into a new folder."

    def add_arguments(self, parser: ArgumentParser) -> None:
        super().add_arguments(parser)
        parser.add_argument("folder", type=Path)
        parser.add_argument("--site", required=True, help="the site's address, which cards and critiques print")
        parser.add_argument("--size", choices=sorted(SIZES), default="A4")
        parser.add_argument("--language", choices=Language.values, default="en", help="of papers, cards and critiques")

    def do_in(self, show: Show, who: Account, told: dict[str, Any]) -> None:
        require(who, show, "number-entries")
        size, site = told["size"], told["site"].rstrip("/")
        with new_folder(told["folder"]) as folder:
            with translation.override(told["language"]):
                gathered = programme_of(show)
                for paper in PAPERS.values():
                    (folder / f"{paper.code}.pdf").write_bytes(paper.print(gathered, size))
                cards = number_cards(show=show, wanted="", where=site + reverse("home:claim"), size=size)
            (folder / "number-cards.pdf").write_bytes(cards)
            critiques = self._critiques(folder / "critiques.pdf", show, who, told)
        self.stdout.write(f"{told['folder']} holds {len(PAPERS) + 1} papers and {critiques} critiques.")

    def _critiques(self, target: Path, show: Show, who: Account, told: dict[str, Any]) -> int:
        """All published critiques as one file; how many there are."""
        kind, language = PaperRun.Kind.BOOK, told["language"]
        try:
            run = runs.start_run(
                by=who, show=show, kind=kind, language=language, size=told["size"], site=told["site"].rstrip("/") + "/"
            )
        except NotNow as none_yet:
            self.stdout.write(none_yet.reason)
            return 0
        while not run.is_ready:
            run = runs.advance(run)
        with run.file.open() as file, target.open("wb") as copy:
            shutil.copyfileobj(file, copy)
        return len(run.critiques)
