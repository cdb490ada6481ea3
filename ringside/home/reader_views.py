"""An owner names who else reads a dog's critiques; whoever is named reads them, signed in, and nothing else."""

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils.translation import get_language
from django.utils.translation import gettext as _
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_GET, require_POST

from ringside.core.denied import NotNow
from ringside.entries.own import access_own_dog
from ringside.home import readers
from ringside.home.forms import ReaderForm
from ringside.home.reading import reading_of
from ringside.home.sharing import critique_in
from ringside.home.views import dog_page
from ringside.papers.build import paper_for
from ringside.papers.critique import critique_pdf
from ringside.papers.views import as_file, check_url, size_of
from ringside.people.models import Account, Language
from ringside.results.models import Critique


@login_required
@require_POST
def let_read(request: HttpRequest, dog_id: int) -> HttpResponse:
    assert isinstance(request.user, Account)
    dog = access_own_dog(request.user, dog_id)
    form = ReaderForm(request.POST)
    if not form.is_valid():
        return dog_page(request, dog, form, status=400)
    where = request.build_absolute_uri(f"{reverse('home:mine')}#to-read")
    try:
        reader = readers.let_read(by=request.user, dog=dog, where=where, **form.cleaned_data)
    except NotNow as denied:
        form.add_error("email", denied.reason)
        return dog_page(request, dog, form, status=denied.status)
    told = _("{email} may read the critiques of {dog} from now on, and is told so by e-mail.")
    messages.success(request, told.format(email=reader.email, dog=dog.name))
    return redirect(f"{reverse('home:dog', args=[dog.pk])}#readers")


@login_required
@require_POST
def take_back(request: HttpRequest, reader_id: int) -> HttpResponse:
    assert isinstance(request.user, Account)
    reader = readers.access_own_reader(request.user, reader_id)
    readers.take_back(by=request.user, reader=reader)
    messages.success(request, _("Taken back: {email} reads nothing of this dog now.").format(email=reader.email))
    return redirect(f"{reverse('home:dog', args=[reader.dog_id])}#readers")


@login_required
@require_GET
@never_cache
def reading(request: HttpRequest, entry_id: int) -> HttpResponse:
    found = _critique(request, entry_id)
    languages = [{"code": code, "name": name, "is_here": code == found.language} for code, name in Language.choices]
    return render(request, "home/let_read.html", {**reading_of(found), "languages": languages})


@login_required
@require_GET
@never_cache
def reading_pdf(request: HttpRequest, entry_id: int) -> HttpResponse:
    """Without the photo of the day: photos are the owner's."""
    found = _critique(request, entry_id)
    content = critique_pdf(paper_for(found, check_url(request, found), with_photo=False), size_of(request))
    return as_file(content, f"{found.entry.number}-{found.entry.dog.name}-{found.language}")


def _critique(request: HttpRequest, entry_id: int) -> Critique:
    entry = readers.access_reading(request.user, entry_id)
    return critique_in(request.GET.get("in") or get_language() or "en", entry.pk)
