"""Why an edit does not count: kept in English beside the edit, said in the language of whoever reads it.

An edit's reason is part of the record, and several people read it: so it is put together in English and told apart
again by the sentence it was made from. The facts of a sentence stand in braces.
"""

import re
from functools import cache

from django.utils.translation import gettext
from django.utils.translation import gettext_noop as _

REASONS = {
    "not-allowed": _("Your role does not let you {doing}."),
    "id-reused": _("Another edit has this id already; it was kept."),
    "sign-not-kept": _("This text holds a sign that no database can keep (U+0000). Type it again."),
    "after-signing": _("The sheet is signed; the judge decides whether this counts."),
    "two-devices": _("Two devices say different things; both are kept."),
    "lost-tablet": _("This tablet was declared lost; the judge decides whether this counts."),
    "newer-page": _("This edit was written by a newer page than the server knows."),
    "no-such-sheet": _("There is no such sheet in this show."),
    "other-ring": _("This dog or class is judged in another ring."),
    "withdrawn": _("Number {numbers} was withdrawn."),
    "moved": _("Number {numbers} was moved to another class."),
    "no-such-point": _("The standard of the {breed} has no such point."),
    "no-such-choice": _("{point} has no such choice."),
    "no-such-tooth": _("A dog has no tooth of that number."),
    "number-outside": _("{point}: give {least} to {most} {unit}."),
    "no-such-grade": _("This class has no such grade."),
    "no-such-dog": _("No dog of this class has the entry {entries}."),
    "no-such-award": _("These rules give a breed no such award."),
    "no-such-dog-of-breed": _("No {sex} of this breed has the entry {entry}."),
    "not-known-here": _("Its dog, class or format is not known here."),
}
FACT = re.compile(r"\\\{(\w+)\\\}")


def reason(code: str, **facts: object) -> str:
    """The English sentence, as it is kept."""
    return REASONS[code].format(**facts)


def reason_said(kept: str) -> str:
    """A kept sentence in the reader's language; one that is not from here is said as it stands."""
    for template, pattern in _patterns():
        if found := pattern.fullmatch(kept):
            return gettext(template).format(**{name: gettext(fact) for name, fact in found.groupdict().items()})
    return kept


@cache
def _patterns() -> list[tuple[str, re.Pattern[str]]]:
    """Each sentence with the shape of what it becomes; the first that fits is the one."""
    return [
        (template, re.compile(FACT.sub(r"(?P<\1>.+?)", re.escape(template)), re.DOTALL))
        for template in REASONS.values()
    ]
