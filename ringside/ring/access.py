"""Who works at a ring: somebody signed in with a role there, or a paired tablet."""

from dataclasses import dataclass

from django.http import HttpRequest

from ringside.core.denied import Denied
from ringside.people.models import Account
from ringside.ring.models import Pairing
from ringside.ring.pairing import standing
from ringside.shows.access import access_ring
from ringside.shows.may import doing_words, may
from ringside.shows.models import Ring

SESSION_KEY = "pairing"


@dataclass(frozen=True, slots=True)
class Worker:
    """A ring, the roles somebody has there, and by whom or by which pairing."""

    ring: Ring
    roles: frozenset[str]
    account: Account | None = None
    pairing: Pairing | None = None


def access_worker(request: HttpRequest, ring_id: int, doing: str = "see-ring") -> Worker:
    """Whoever asks, as a worker of this ring. A tablet paired with the ring works in the role it was paired for."""
    pairing = standing(request.session.get(SESSION_KEY))
    if pairing and pairing.ring_id == ring_id:
        roles = frozenset({str(pairing.kind)})
        if not may(roles, doing):
            raise Denied("This tablet's role does not let you {doing}.", doing=doing_words(doing))
        return Worker(pairing.ring, roles, pairing=pairing)
    if not isinstance(request.user, Account):
        raise Denied("Sign in again, or pair this tablet again; everything written on it is kept.", status=401)
    ring, roles = access_ring(request.user, ring_id, doing)
    return Worker(ring, roles, account=request.user)
