"""Award cards on the papers desk: those given so far, or a ring's blank ones."""

from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.utils import translation
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET

from ringside.core.denied import NotNow
from ringside.papers.award_cards import SHEETS, award_cards_pdf
from ringside.papers.award_gathering import blank_cards, given_cards
from ringside.papers.rings import ring_asked
from ringside.papers.views import as_file, language_of, size_of
from ringside.shows.access import access_show


@login_required
@require_GET
def cards(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug)
    ring = ring_asked(request, show)
    is_given = request.GET.get("kind") == "given"
    language = language_of(request)
    with translation.override(language):
        found = given_cards(show, ring) if is_given else blank_cards(show, ring)
    if not found and is_given:
        raise NotNow(
            "No judge has signed an award here yet: there is no card to print. The blank ones can be printed before."
        )
    if not found:
        raise NotNow("There is no award here for which a dog is entered: take entries first.")
    asked = request.GET.get("per_sheet", "")
    per_sheet = int(asked) if asked in map(str, SHEETS) else max(SHEETS)
    kind = "award-cards" if is_given else "blank-award-cards"
    name = f"{kind}-{slug}{f'-ring-{ring.name}' if ring else ''}"
    with translation.override(language):
        title = _("Award cards: {show}").format(show=show.name)
        content = award_cards_pdf(found, title, size_of(request), per_sheet)
    return as_file(content, name)
