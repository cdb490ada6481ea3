"""The language in which the site speaks to a browser and, signed in, to an account."""

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_POST
from django.views.i18n import set_language

from ringside.people.actions import choose_language
from ringside.people.models import Account, Language


@require_POST
def language(request: HttpRequest) -> HttpResponse:
    """Kept in the browser, and with the account where there is one: its letters come in it as well."""
    chosen = request.POST.get("language", "")
    if isinstance(request.user, Account) and chosen in Language.values:
        choose_language(account=request.user, language=chosen)
    return set_language(request)
