"""A result in words: in each language of the critique, and as the desk's pages say it in the reader's language."""

from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from scoring.critique.lexicon import load, spoken
from scoring.rules.rulebook import Group, TitleRule
from scoring.standards.model import Sex

PRESENCES = {"present": _("present"), "absent": _("absent"), "excused": _("excused"), "withdrawn": _("withdrawn")}

# How an award stands, and in an award's tree how a class stands.
STATES = {
    "given": _("given"),
    "withheld": _("withheld"),
    "cancelled": _("cancelled"),
    "undecided": _("undecided"),
    "placed": _("placed"),
    "nobody": _("no dog placed"),
    "not signed": _("not signed"),
}


def result_in(language: str, sex: Sex, grade: str | None, place: int | None) -> str:
    """ "Excellent, second place" in the language, of a dog or a bitch; empty where there is neither grade nor place."""
    told = load(language)
    said = [told["grades"][grade]] if grade in told["grades"] else []
    if place:
        said.append(spoken(told["places"].get(str(place), told["places"]["further"].format(place)), sex))
    result = ", ".join(said)
    return result[:1].upper() + result[1:]


def presence_words(presence: str) -> str:
    return str(PRESENCES.get(presence, presence))


def state_words(state: str) -> str:
    return str(STATES.get(state, state))


def missing_of(number: int | None, missing: str) -> str:
    """ "number 12: grade"."""
    return gettext("number {number}: {missing}").format(number=number, missing=missing)


def group_name(group: Group) -> str:
    """In the reader's language, as it stands alone."""
    return gettext(group.name)


def title_name(title: TitleRule) -> str:
    return gettext(title.name)
