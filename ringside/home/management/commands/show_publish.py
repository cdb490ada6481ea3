"""Publishes what the judges have signed: classes, then the awards of breeds, then finals."""

from argparse import ArgumentParser
from collections.abc import Callable
from typing import Any

from ringside.core.denied import NotNow
from ringside.home.management.shows import ShowCommand
from ringside.people.models import Account
from ringside.results import final_actions, queries
from ringside.results.actions import publish_class
from ringside.results.award_actions import publish_awards
from ringside.results.awards import awards_of, breeds_of
from ringside.results.finals import finals_of
from ringside.shows.access import require
from ringside.shows.models import Show


class Command(ShowCommand):
    help = "Publish every class, breed's awards and final that is signed; says of each other what it waits for."

    def add_arguments(self, parser: ArgumentParser) -> None:
        super().add_arguments(parser)
        parser.add_argument("--site", default="", help="the site's address; with it, letters go to the owners")

    def do_in(self, show: Show, who: Account, told: dict[str, Any]) -> None:
        require(who, show, "publish-results")
        classes = [one for one in queries.compiled_many(queries.classes_of(show)) if one.state != "published"]
        self._all(
            "classes",
            [
                (found.title, lambda one=found.show_class: publish_class(by=who, show_class=one, site=told["site"]))
                for found in classes
            ],
        )
        awards = [found for found in awards_of(breeds_of(show)) if found.state != "published" and found.card.awards]
        self._all(
            "breeds' awards",
            [(one.title, lambda breed=one.card.breed: publish_awards(by=who, show_breed=breed)) for one in awards],
        )
        finals = [(one.title, one.row) for one in finals_of(show).stands if one.row and one.state != "published"]
        self._all(
            "finals",
            [(title, lambda row=row: final_actions.publish_final(who=who, final=row)) for title, row in finals],
        )

    def _all(self, what: str, wanted: list[tuple[str, Callable[[], object]]]) -> None:
        waiting = []
        for title, publish in wanted:
            try:
                publish()
            except NotNow as wait:
                waiting.append(f"  {title}: {wait.reason}")
        self.stdout.write(f"{len(wanted) - len(waiting)} {what} published, {len(waiting)} wait.")
        for words in waiting:
            self.stdout.write(words)
