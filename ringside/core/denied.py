"""A refusal carries its sentence, so that whoever is refused is told why and what to do."""

from typing import Any

from django.utils.translation import gettext


class Denied(Exception):
    """What was asked may not be done; `str()` is the sentence to show. Pages answer 403, or 409 for a state."""

    def __init__(self, reason: str, status: int = 403, **facts: Any) -> None:
        """`reason` is English; it is said in the reader's language, with the facts it names in braces."""
        told = gettext(reason)
        self.reason, self.status = told.format(**facts) if facts else told, status
        super().__init__(self.reason)


class NotNow(Denied):
    """Allowed to this person, but not in the state things are in."""

    def __init__(self, reason: str, **facts: Any) -> None:
        super().__init__(reason, status=409, **facts)
