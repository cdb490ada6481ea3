"""How many requests wait for the office, for the tabs of its results pages."""

from django import template

from ringside.home import asking
from ringside.shows.models import Show

register = template.Library()


@register.simple_tag
def open_requests(show: Show) -> int:
    return asking.open_requests(show)
