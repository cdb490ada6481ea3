"""One-click doors into the demo show; these addresses exist only where DEMO is set."""

from django.contrib.auth import login
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect
from django.views.decorators.cache import cache_control
from django.views.decorators.http import require_GET, require_POST

from ringside.dogs.models import Dog
from ringside.drawings.portrait import portrait_of, portrait_svg
from ringside.home import demo


@require_POST
def enter(request: HttpRequest, face: str) -> HttpResponse:
    if face not in demo.FACES:
        raise Http404
    login(request, demo.account_of(face))
    return redirect(demo.opening_page(face))


@require_GET
@cache_control(public=True, max_age=86400)
def portrait(request: HttpRequest, dog_id: int) -> HttpResponse:
    """A drawn picture of one of the demo's dogs: none of them was ever photographed."""
    dog = get_object_or_404(Dog, pk=dog_id)
    picture = portrait_svg(portrait_of(dog.breed, dog.name), "A drawn dog")
    return HttpResponse(picture.replace("<svg ", '<svg color="#1a1d1b" ', 1), content_type="image/svg+xml")
