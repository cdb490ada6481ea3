"""A small show with one class published: a critique each for the dogs of Ada and Ben, in four languages."""

import re
from dataclasses import dataclass

from django.test import Client

from ringside.results import actions
from ringside.results.models import Critique
from tests.results.writing import Pen, judge_and_sign
from tests.shows_for_tests import SmallShow, small_show


@dataclass(frozen=True)
class Published:
    at: SmallShow

    def critique(self, number: int, language: str = "en") -> Critique:
        return Critique.objects.get(entry__number=number, entry__show=self.at.show, language=language)

    def client(self, name: str) -> Client:
        client = Client()
        client.force_login(self.at.accounts[name])
        return client


def published() -> Published:
    at = small_show()
    pen = Pen(at)
    for entry in at.entries[:2]:
        key = f"entry:{entry.pk}"
        pen.write(key, {"mark.croup": 1, "mark.topline": 0, "mark.reach": 0, "choice.bite": "undershot"})
        pen.sign(key)
    judge_and_sign(at)
    actions.publish_class(by=at.accounts["secretary"], show_class=at.show_class)
    return Published(at)


# Made by chance, and so they may hold any three letters: tokens of forms, fingerprints, links.
BY_CHANCE = re.compile(r'name="csrfmiddlewaretoken" value="[^"]*"|/shared/[\w-]+|\b[0-9a-f]{16,64}\b')


def told_by(page: str) -> str:
    """What a page tells of anybody, in small letters."""
    return BY_CHANCE.sub("", page).lower()
