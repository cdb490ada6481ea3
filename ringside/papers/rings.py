"""Which ring's papers are asked for."""

from django.http import Http404, HttpRequest

from ringside.shows.models import Ring, Show


def rings_of(show: Show) -> list[Ring]:
    return list(Ring.objects.filter(show=show).order_by("name", "id"))


def ring_asked(request: HttpRequest, show: Show) -> Ring | None:
    """The ring that the address names; None where it names none: all of them."""
    asked = request.GET.get("ring", "")
    if not asked:
        return None
    found = next((ring for ring in rings_of(show) if str(ring.pk) == asked), None)
    if found is None:
        raise Http404
    return found
