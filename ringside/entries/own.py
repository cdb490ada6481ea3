"""The only ways by which a page gets an owner's own dog or entry."""

from typing import Any

from django.http import Http404

from ringside.dogs.models import Dog
from ringside.entries.models import Entry
from ringside.people.models import Account


def owns(user: Any, dog: Dog) -> bool:
    return isinstance(user, Account) and dog.owners.filter(account=user).exists()


def access_own_dog(user: Any, dog_id: int) -> Dog:
    found = Dog.objects.filter(pk=dog_id).first()
    if found is None or not owns(user, found):
        raise Http404
    return found


def access_own_entry(user: Any, entry_id: int) -> Entry:
    found = Entry.objects.select_related("dog", "show", "show_class__show_breed__show").filter(pk=entry_id).first()
    if found is None or not owns(user, found.dog):
        raise Http404
    return found
