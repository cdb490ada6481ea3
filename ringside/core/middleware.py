"""Says in which language a request is answered; turns a refusal into a page, or into JSON for the tablet."""

from collections.abc import Callable

from django.conf import settings
from django.http import HttpRequest, HttpResponse, JsonResponse
from django.middleware.locale import LocaleMiddleware
from django.shortcuts import render
from django.utils import translation

from ringside.core.denied import Denied
from ringside.core.stale import wants_json


class LanguageMiddleware(LocaleMiddleware):
    """What the address asks for (`?in=de`: a tablet's page), else what the account has chosen, else the browser."""

    def process_request(self, request: HttpRequest) -> None:
        chosen = request.GET.get("in", "")
        if chosen not in dict(settings.LANGUAGES) and settings.SESSION_COOKIE_NAME in request.COOKIES:
            chosen = getattr(request.user, "language", "")
        if chosen not in dict(settings.LANGUAGES):
            super().process_request(request)
            return
        translation.activate(chosen)
        request.LANGUAGE_CODE = chosen


class DeniedMiddleware:
    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        return self.get_response(request)

    def process_exception(self, request: HttpRequest, error: Exception) -> HttpResponse | None:
        if not isinstance(error, Denied):
            return None
        if wants_json(request):
            # Whoever is refused gets no token: it would take the place of one that a page in the same browser holds.
            request.META["CSRF_COOKIE_NEEDS_UPDATE"] = False
            return JsonResponse({"error": error.reason}, status=error.status)
        return render(request, "core/denied.html", {"reason": error.reason}, status=error.status)
