"""How often somebody may guess: wrong tries are counted by address, by what is guessed at, and in all."""

from collections.abc import Mapping
from datetime import timedelta

from django.core.cache import cache

from ringside.core.denied import Denied


def limit(what: str, most: Mapping[str, int]) -> None:
    """Denied where one of the counts is used up. `most` says for each key how many wrong tries it takes."""
    if any(cache.get(f"{what}-wrong-{key}", 0) >= allowed for key, allowed in most.items()):
        raise Denied("Too many wrong tries. Wait a quarter of an hour, then try again.", status=429)


def count(what: str, most: Mapping[str, int], good_for: timedelta = timedelta(minutes=15)) -> None:
    """One wrong try more, on every key."""
    for key in most:
        name = f"{what}-wrong-{key}"
        # Not incr(): in the database it would shorten the wait to the cache's own five minutes.
        cache.set(name, cache.get(name, 0) + 1, good_for.total_seconds())
