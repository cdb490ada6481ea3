"""What every page knows."""

from typing import Any

from django.conf import settings
from django.http import HttpRequest


def site(request: HttpRequest) -> dict[str, Any]:
    return {"demo": settings.DEMO, "field": settings.FIELD, "site_languages": settings.LANGUAGES}
