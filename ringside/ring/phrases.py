"""The words of the written critique, one breed and language at a time, as the tablet composes with them."""

from django.http import Http404, HttpRequest, JsonResponse
from django.views.decorators.cache import cache_control
from django.views.decorators.gzip import gzip_page
from django.views.decorators.http import require_GET

from scoring.critique.lexicon import LANGUAGES
from scoring.critique.table import compiled
from scoring.standards import loader as standards


@require_GET
@gzip_page
@cache_control(no_cache=True)
def phrases(request: HttpRequest, breed: str, language: str) -> JsonResponse:
    """Nothing of a show or a person is in it: six kilobytes packed, asked for only in the language a judge chose."""
    if breed not in standards.codes() or language not in LANGUAGES:
        raise Http404
    return JsonResponse(compiled(breed, language))
