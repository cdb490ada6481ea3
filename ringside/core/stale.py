"""What a page or a tablet hears whose token is stale: the browser lost its cookies, or kept a page too long."""

from django.http import HttpRequest, HttpResponse, JsonResponse
from django.utils.translation import gettext
from django.views.csrf import csrf_failure


def stale(request: HttpRequest, reason: str = "") -> HttpResponse:
    """A tablet gets JSON that sets no cookie: another page of its browser may just be getting a token of its own."""
    if wants_json(request):
        return JsonResponse({"error": gettext("Please try again")}, status=403)
    return csrf_failure(request, reason)


def wants_json(request: HttpRequest) -> bool:
    return "application/json" in request.headers.get("accept", "")
