"""What each stage of a show still lacks, for the left column of the office."""

from django import template
from django.utils import timezone

from ringside.home.standing import standing_of
from ringside.shows.models import Show

register = template.Library()


@register.simple_tag
def standing(show: Show) -> dict[str, list[str]]:
    return standing_of(show, timezone.localdate())
