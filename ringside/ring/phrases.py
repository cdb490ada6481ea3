"""The words of one language as the tablet needs them: of the written critique by breed, and of sheets and rules."""

from typing import Any

from django.http import Http404, HttpRequest, JsonResponse
from django.utils import translation
from django.utils.translation import gettext
from django.views.decorators.cache import cache_control
from django.views.decorators.http import require_GET

from ringside.core.packing import packed
from ringside.ring.reasons import REASONS
from ringside.shows.may import MAY
from scoring.critique.lexicon import LANGUAGES
from scoring.critique.table import compiled
from scoring.rules import translated as rules
from scoring.standards import loader as standards
from scoring.standards import translated as sheets


@require_GET
@packed
@cache_control(no_cache=True)
def phrases(request: HttpRequest, breed: str, language: str) -> JsonResponse:
    """Nothing of a show or a person is in it: six kilobytes packed, asked for only in the language a judge chose."""
    if breed not in standards.codes() or language not in LANGUAGES:
        raise Http404
    return JsonResponse(compiled(breed, language))


@require_GET
@packed
@cache_control(no_cache=True)
def names(request: HttpRequest, language: str) -> JsonResponse:
    """The names of points, ends, options, classes, grades, awards, breeds and reasons; English comes with the day."""
    if language not in sheets.languages():
        raise Http404
    return JsonResponse(names_in(language))


def names_in(language: str) -> dict[str, Any]:
    words = sheets.words(language)
    return {**{part: words[part] for part in ("sections", "points", "options")}, **rules.words(language),
            "breeds": dict(_breeds(words)), **_reasons(language)}  # fmt: skip


def _reasons(language: str) -> dict[str, dict[str, str]]:
    """Why an edit does not count, by its English sentence, and the facts in it that are words, by the English one."""
    facts = ("dog", "bitch", *(words for words, _ in MAY.values()))
    with translation.override(language):
        return {
            part: {one: gettext(one) for one in each}
            for part, each in (("reasons", REASONS.values()), ("facts", facts))
        }


def _breeds(words: sheets.Words) -> list[tuple[str, str]]:
    """The English name of every breed and variety, as the day gives it, with its name in the language."""
    found = []
    for standard in standards.all_standards():
        name = words["breeds"][standard.code]
        found.append((standard.name, name))
        found += [
            (f"{standard.name}, {one.name}", f"{name}, {words['varieties'][one.name]}") for one in standard.varieties
        ]
    return found
