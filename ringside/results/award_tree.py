"""The path from class winners and reserve contenders to best of breed, as trees that fill as awards are given.

An award grows from the awards whose winners compete for it, and from the classes that no branch below it holds yet.
An award that hangs on another's winner (a reserve, best of opposite sex) stands beside that other.
"""

from collections.abc import Collection, Iterator
from dataclasses import dataclass, replace

from django.utils.text import capfirst
from django.utils.translation import pgettext_lazy

from ringside.dogs.wording import SEXES
from ringside.entries.models import Entry
from ringside.results.awards import line_of
from ringside.results.wording import state_words
from ringside.ring.awards import BreedCard
from ringside.shows.books import class_name
from scoring.rules.award_card import Offered, competing
from scoring.rules.rulebook import Sex

ORDINALS = {
    1: pgettext_lazy("place", "first"),
    2: pgettext_lazy("place", "second"),
    3: pgettext_lazy("place", "third"),
    4: pgettext_lazy("place", "fourth"),
}


@dataclass(frozen=True)
class Node:
    """An award or a class. `state` is given, withheld, undecided, or for a class: placed, nobody, not signed.

    `wins` says that its dog goes on to the award above; `contenders` are dogs that compete, each with its reason.
    """

    title: str
    state: str
    entries: tuple[Entry, ...] = ()
    wins: bool = False
    branches: tuple["Node", ...] = ()
    beside: tuple["Node", ...] = ()
    contenders: tuple[tuple[Entry, str], ...] = ()
    held_classes: frozenset[tuple[Sex, str]] = frozenset()

    @property
    def state_words(self) -> str:
        return state_words(self.state)


def trees_of(card: BreedCard) -> list[Node]:
    """Best of breed with all that leads to it first, then the breed's other awards."""
    return list(_Grower(card).trees())


class _Grower:
    """Grows each branch once: an award met again stands there without its branches."""

    def __init__(self, card: BreedCard) -> None:
        self.card, self.book = card, card.book
        self.grown: set[str] = set()
        self.beside = {one.code: host for one in card.awards if (host := self._host(one))}
        self.main = [one for one in card.awards if one.code not in self.beside]

    def _host(self, one: Offered) -> str:
        """The code of the offered award beside which this one stands; empty where it stands alone."""
        lines = one.award.candidates
        named = next((code for line in lines if (code := line.second_to or line.other_sex_than)), None)
        hosts = (host.code for host in self.card.awards if host.award.code == named and host.sex in (None, one.sex))
        return next(hosts, "")

    def trees(self) -> Iterator[Node]:
        feeding = {code for one in self.main for line in one.award.candidates for code in line.winners_of}
        roots = [one for one in self.main if one.award.code not in feeding]
        for one in sorted(roots, key=lambda one: not self._feeders(one)):
            yield self._award(one)

    def _award(self, one: Offered) -> Node:
        node = self._alone(one)
        if one.code in self.grown:
            return node
        self.grown.add(one.code)
        branches = [self._award(feeder) for feeder in self._feeders(one)]
        held = frozenset().union(*(branch.held_classes for branch in branches))
        leaves = list(self._classes(one, held))
        own = frozenset().union(*(leaf.held_classes for leaf in leaves))
        dogs = {entry.dog_id for entry in node.entries}
        goes_on = [
            replace(below, wins=any(entry.dog_id in dogs for entry in below.entries)) for below in (*branches, *leaves)
        ]
        return replace(node, branches=tuple(goes_on), beside=tuple(self._companions(one)), held_classes=held | own)

    def _feeders(self, one: Offered) -> list[Offered]:
        codes = {code for line in one.award.candidates for code in line.winners_of}
        return [other for other in self.main if other.award.code in codes and one.sex in (None, other.sex)]

    def _companions(self, host: Offered) -> Iterator[Node]:
        for one in self.card.awards:
            if self.beside.get(one.code) == host.code:
                yield replace(self._alone(one), contenders=tuple(self._contenders(one)))

    def _contenders(self, one: Offered) -> Iterator[tuple[Entry, str]]:
        """Once the award it hangs on is decided: before, the same dogs would only be named twice."""
        if self.beside[one.code] not in self.card.decided:
            return
        for each in competing(self.book, one, self.card.card):
            code = each.why.facts.get("class")
            place = 2 if each.why.code == "competes-as-second" else each.why.facts.get("place")
            words = [self._class_name(code), ORDINALS.get(place)] if code else []
            yield self.card.entries[each.entry], ", ".join(str(word) for word in words if word)

    def _alone(self, one: Offered) -> Node:
        line = line_of(self.card, one)
        return Node(line.words, line.state, (line.entry,) if line.entry else ())

    def _classes(self, one: Offered, held: Collection[tuple[Sex, str]]) -> Iterator[Node]:
        for show_class in self.card.classes:
            key = (show_class.sex, show_class.code)
            lines = [line for line in one.award.candidates if show_class.code in line.classes]
            if lines and key not in held and one.sex in (None, show_class.sex):
                places = {place for line in lines for place in line.places}
                yield self._class(key, places)

    def _class(self, key: tuple[Sex, str], places: Collection[int]) -> Node:
        sex, code = key
        title = f"{capfirst(self._class_name(code))}, {SEXES[sex]}"
        standing = [each for each in self.card.card.standings if (each.sex, each.class_code) == key]
        first = [self.card.entries[each.entry] for each in standing if not places or each.place in places]
        is_signed = any((one.sex, one.code) == key for one in self.card.classes if one.pk in self.card.signed)
        state = "placed" if first else "nobody" if is_signed else "not signed"
        return Node(title, state, tuple(first), held_classes=frozenset({key}))

    def _class_name(self, code: str) -> str:
        return class_name(self.book.class_rule(code))
