"""What the links between the pages of a list carry along."""

from django.http import HttpRequest


def query_without_page(request: HttpRequest) -> str:
    """Search, filter and order as they were asked for; the link adds its page."""
    query = request.GET.copy()
    query.pop("page", None)
    return query.urlencode()
