"""The pages of a list: which one an address asks for, and what the links between them carry along."""

from collections.abc import Mapping

from django.http import HttpRequest


def page_asked(given: Mapping[str, str]) -> int:
    """The number of the page; the first where none is asked for, or nothing that can be one."""
    asked = given.get("page", "1")
    return int(asked) if asked.isascii() and asked.isdecimal() and len(asked) < 7 else 1


def query_without_page(request: HttpRequest) -> str:
    """Search, filter and order as they were asked for; the link adds its page."""
    query = request.GET.copy()
    query.pop("page", None)
    return query.urlencode()
