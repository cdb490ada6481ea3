"""Answers packed as tight as the browser can unpack them: a field's network is poor."""

from collections.abc import Callable
from functools import lru_cache, wraps
from typing import Any

import brotli
from django.http import HttpRequest, HttpResponse
from django.utils.cache import patch_vary_headers
from django.views.decorators.gzip import gzip_page

View = Callable[..., HttpResponse]


def packed(view: View) -> View:
    """Brotli where the browser takes it, otherwise gzip. For answers that hold no secret and repeat nothing asked."""
    with_gzip = gzip_page(view)

    @wraps(view)
    def inner(request: HttpRequest, *args: Any, **kwargs: Any) -> HttpResponse:
        if "br" not in request.headers.get("Accept-Encoding", "").replace(",", " ").split():
            return with_gzip(request, *args, **kwargs)
        response = view(request, *args, **kwargs)
        response.content = compressed(response.content)
        response.headers["Content-Encoding"] = "br"
        patch_vary_headers(response, ["Accept-Encoding"])
        return response

    return inner


@lru_cache(maxsize=32)
def compressed(content: bytes) -> bytes:
    """A tenth of a second for a ring's day, so what several tablets ask for is packed once."""
    found: bytes = brotli.compress(content)
    return found
