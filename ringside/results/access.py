"""The only way by which a page gets a critique: the reader owns the dog, or works in that show's office."""

from typing import Any

from django.http import Http404

from ringside.people.models import Account
from ringside.results.models import Critique
from ringside.shows.access import roles_of
from ringside.shows.may import may


def access_critique(user: Any, critique_id: int) -> Critique:
    found = (
        Critique.objects.select_related(
            "entry__dog",
            "entry__placing",
            "entry__show_class__show_breed__show",
            "entry__show_class__show_breed__judge",
        )
        .filter(pk=critique_id, entry__show_class__publication__isnull=False)
        .first()
    )
    if found is None or not (_is_owner(user, found) or _works_there(user, found) or _is_public(found)):
        raise Http404
    return found


def _is_owner(user: Any, critique: Critique) -> bool:
    return isinstance(user, Account) and critique.entry.dog.owners.filter(account=user).exists()


def _works_there(user: Any, critique: Critique) -> bool:
    return may(roles_of(user, critique.entry.show), "see-office")


def _is_public(critique: Critique) -> bool:
    return critique.entry.show.critiques_public
