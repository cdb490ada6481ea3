"""A tablet that is to work in a ring: it types or reads a code, and is let in without a password."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods

from ringside.core.denied import Denied
from ringside.ring import pairing
from ringside.ring.access import SESSION_KEY


@require_http_methods(["GET", "POST"])
def pair(request: HttpRequest, code: str = "") -> HttpResponse:
    """GET only asks, so that a preview of the link does not use the code up; POST pairs."""
    typed = request.POST.get("code", code)[:40]
    if request.method == "GET":
        return render(request, "ring/pair.html", {"code": typed})
    try:
        found = pairing.pair(code=typed, address=request.META.get("REMOTE_ADDR", ""))
    except Denied as denied:
        return render(request, "ring/pair.html", {"code": typed, "wrong": denied.reason}, status=denied.status)
    # A new session: whoever used this tablet before does not go on in it.
    request.session.flush()
    request.session[SESSION_KEY] = found.pk
    return redirect("ring:page", ring_id=found.ring_id)
