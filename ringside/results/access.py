"""The only way by which a page gets a critique: its reader owns the dog or works in the office, or it is public."""

from collections.abc import Callable
from functools import wraps
from typing import Any

from django.contrib.auth.views import redirect_to_login
from django.http import Http404, HttpRequest, HttpResponse

from ringside.entries.consents.queries import dogs_kept_private
from ringside.people.models import Account
from ringside.results.models import Critique
from ringside.shows.access import roles_of
from ringside.shows.appointed import appointments_of
from ringside.shows.may import may

View = Callable[..., HttpResponse]


def or_sign_in(view: View) -> View:
    """Whoever is not signed in and finds nothing is asked to sign in: it may be theirs to read."""

    @wraps(view)
    def inner(request: HttpRequest, *args: Any, **kwargs: Any) -> HttpResponse:
        try:
            return view(request, *args, **kwargs)
        except Http404:
            if request.user.is_authenticated:
                raise
            return redirect_to_login(request.get_full_path())

    return inner


def access_critique(user: Any, critique_id: int) -> Critique:
    found = (
        Critique.objects.select_related(
            "entry__dog",
            "entry__placing",
            "entry__show_class__show_breed__show",
            "entry__show_class__show_breed__judge",
            "entry__show_class__judged_by",
            "judge",
        )
        .prefetch_related(appointments_of("entry__show_class__show_breed__"))
        .published()
        .filter(pk=critique_id)
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
    entry = critique.entry
    return entry.show.critiques_public and entry.dog_id not in dogs_kept_private(entry.show)
