"""What becomes of consents when a person is forgotten: that there was one stays on record, the address goes."""

from collections.abc import Sequence
from datetime import date

from django.db.models import QuerySet
from django.utils import timezone

from ringside.entries.models import Consent
from ringside.people.models import Person


def forget_consents(people: Sequence[Person]) -> None:
    found = Consent.objects.filter(person__in=people)
    # Critiques that a show has published to everybody are part of its record, as results are.
    standing = found.filter(withdrawn_at=None).exclude(what=Consent.What.CRITIQUES_PUBLIC)
    standing.update(withdrawn_at=timezone.now(), withdrawn_way=Consent.Way.FORGOTTEN)
    found.update(text="")


def forget_named(named: QuerySet[Consent]) -> None:
    """Whoever these let read is forgotten: the address goes, and nobody is left to read."""
    keys = list(named.values_list("pk", flat=True))
    found = Consent.objects.filter(pk__in=keys)
    found.filter(withdrawn_at=None).update(withdrawn_at=timezone.now(), withdrawn_way=Consent.Way.FORGOTTEN)
    found.update(text="")


def forget_old_addresses(before: date) -> None:
    """Addresses for the catalogues of shows that are long over, also of people who never had an account."""
    Consent.objects.filter(show__last_day__lt=before).exclude(text="").update(text="")
