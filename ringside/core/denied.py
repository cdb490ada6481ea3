"""A refusal carries its sentence, so that whoever is refused is told why and what to do."""


class Denied(Exception):
    """What was asked may not be done; `str()` is the sentence to show. Pages answer 403, or 409 for a state."""

    def __init__(self, reason: str, status: int = 403) -> None:
        super().__init__(reason)
        self.reason, self.status = reason, status


class NotNow(Denied):
    """Allowed to this person, but not in the state things are in."""

    def __init__(self, reason: str) -> None:
        super().__init__(reason, status=409)
