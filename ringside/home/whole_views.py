"""A whole show as a file: taken out by its owner, taken in by whoever may start shows here."""

import tempfile

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import FileResponse, HttpRequest, HttpResponse
from django.http.response import HttpResponseBase
from django.shortcuts import redirect, render
from django.utils.translation import gettext
from django.views.decorators.http import require_GET, require_http_methods

from ringside.core.denied import Denied
from ringside.home.forms import ShowFileForm
from ringside.home.whole.into import take_in
from ringside.home.whole.out import take_out
from ringside.home.whole.reading import NotTakenIn
from ringside.people.models import Account
from ringside.shows.access import access_show

IN_MEMORY = 8 * 1024 * 1024


@login_required
@require_GET
def show_out(request: HttpRequest, slug: str) -> HttpResponseBase:
    assert isinstance(request.user, Account)
    show = access_show(request.user, slug, "take-show-out")
    target = tempfile.SpooledTemporaryFile(max_size=IN_MEMORY)  # noqa: SIM115 - the answer closes it
    take_out(by=request.user, show=show, target=target)  # type: ignore[arg-type]
    target.seek(0)
    answer = FileResponse(target, as_attachment=True, filename=f"show-{slug}.zip")
    answer.headers["Cache-Control"] = "private, no-store"
    return answer


@login_required
@require_http_methods(["GET", "POST"])
def show_in(request: HttpRequest) -> HttpResponse:
    assert isinstance(request.user, Account)
    if not request.user.runs_site:
        raise Denied("You may not take shows in on this site. Whoever runs it can let you.")
    form = ShowFileForm(request.POST or None, request.FILES or None)
    if request.method == "POST" and form.is_valid():
        try:
            show = take_in(by=request.user, file=form.cleaned_data["file"])
        except NotTakenIn as refused:
            form.add_error("file", str(refused))
        else:
            told = gettext("{show} is here as it was there. Print its number cards again.")
            messages.success(request, told.format(show=show))
            return redirect("shows:show", slug=show.slug)
    return render(request, "home/show_in.html", {"form": form}, status=400 if form.errors else 200)
