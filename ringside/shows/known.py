"""What of the rules in force is only from memory, in words for the screens where it is used."""

from collections.abc import Collection, Iterator

from django.utils.text import capfirst
from django.utils.translation import gettext
from django.utils.translation import gettext_noop as _

from ringside.core.sentences import colon
from ringside.shows.books import award_name, class_name, grade_name
from scoring.rules.rulebook import Provenance, RuleBook

# What the values of a record are, as a secretary says it.
VALUES = {
    "candidates": _("who competes"),
    "places": _("how many are placed"),
    "moves_up": _("that the reserve moves up"),
    "least_months": _("the least age"),
    "most_months": _("the greatest age"),
    "certificates": _("its certificates"),
    "titles": _("the titles it asks for"),
    "scale": _("its grades"),
    "least_for_place": _("the least grade for a place"),
    "no_points_from": _("whose dogs earn none"),
    "neutered": _("whether neutered dogs enter"),
}


def notes_on_awards(book: RuleBook, codes: Collection[str]) -> list[str]:
    """One note for each award of these codes of which something is from memory."""
    return [note for award in book.awards if award.code in codes for note in _note(award_name(award), award.provenance)]


def notes_on_class(book: RuleBook, code: str) -> list[str]:
    """What of a class, its grades and its least grade for a place is from memory."""
    rule = book.class_rule(code)
    title = capfirst(gettext("{name} class").format(name=class_name(rule)))
    notes = list(_note(title, rule.provenance))
    for scale in book.scales:
        if scale.code == rule.scale:
            notes += _note(gettext("Grades of this class"), scale.provenance)
    for grade in book.grades_for(code):
        notes += _note(grade_name(grade), grade.provenance)
    if rule.places is None:
        cite = book.provenance.of("places")
        notes += [gettext("How many dogs a class places")] if cite.verified == "memory" else []
    return notes


def notes_on_groups(book: RuleBook) -> list[str]:
    notes = [gettext(group.name) for group in book.groups if group.provenance.whole.verified == "memory"]
    return [gettext("The groups and the breeds in them: {groups}").format(groups=", ".join(notes))] if notes else []


def notes_on_points(book: RuleBook) -> list[str]:
    if book.points is None:
        return []
    notes = list(_note(gettext("Points"), book.points.provenance))
    if book.points.counted_from and book.points.counted_from.verified == "memory":
        notes.append(gettext("Points: in which count the dogs of each class stand"))
    for win in book.points.wins:
        notes += _note(gettext("Points of {win}").format(win=win.code), win.provenance)
    return notes


def notes_on_titles(book: RuleBook) -> list[str]:
    notes: list[str] = []
    for title in book.titles:
        name = gettext(title.name)
        notes += _note(name, title.provenance) if title.routes else []
        needs = [need for route in title.routes for need in route.needs]
        if any(need.provenance.whole.verified == "memory" for need in needs):
            told = gettext("{title}: a condition that is shown and holds nothing back").format(title=name)
            notes.append(told)
    return notes


def _note(name: str, provenance: Provenance) -> Iterator[str]:
    if provenance.whole.verified == "memory":
        yield name
        return
    parts = [
        gettext(VALUES.get(key, key.replace("_", " ")))
        for key, cite in provenance.but.items()
        if cite.verified == "memory"
    ]
    if parts:
        yield colon(name, ", ".join(parts))
