"""What is kept of a person, as its page says it: the file holds days and times as ISO 8601."""

from datetime import datetime

from django import template
from django.utils.formats import date_format
from django.utils.timezone import is_aware, localtime

register = template.Library()


@register.filter
def day_of(told: str) -> str:
    """The day of an ISO day or time, in the reader's language."""
    at = datetime.fromisoformat(told)
    return date_format(localtime(at) if is_aware(at) else at)
