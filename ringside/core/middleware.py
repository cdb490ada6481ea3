"""Turns a refusal into a page, or into JSON for the tablet."""

from collections.abc import Callable

from django.http import HttpRequest, HttpResponse, JsonResponse
from django.shortcuts import render

from ringside.core.denied import Denied


class DeniedMiddleware:
    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        return self.get_response(request)

    def process_exception(self, request: HttpRequest, error: Exception) -> HttpResponse | None:
        if not isinstance(error, Denied):
            return None
        if "application/json" in request.headers.get("accept", ""):
            return JsonResponse({"error": error.reason}, status=error.status)
        return render(request, "core/denied.html", {"reason": error.reason}, status=error.status)
