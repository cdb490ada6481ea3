"""Lists on pages, in the reader's language."""

from django import template

from ringside.core.sentences import apart

register = template.Library()
register.filter("apart", apart)
