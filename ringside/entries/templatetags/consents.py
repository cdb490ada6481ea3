"""The words that somebody agrees to by pressing a button, as they are kept beside the consent."""

from django import template

from ringside.entries.consents.wording import latest, words_of

register = template.Library()


@register.simple_tag
def consent_words(what: str) -> str:
    return words_of(what, latest(what))
