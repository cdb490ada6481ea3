"""The results desk: every class as it stands, one class in full, publishing."""

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext as _
from django.utils.translation import ngettext
from django.views.decorators.http import require_GET, require_POST

from ringside.results import actions, queries
from ringside.results.corrections import corrections_of
from ringside.results.letters import last_letters, send_again
from ringside.results.models import PaperClass
from ringside.shows.access import access_class, access_show, roles_of
from ringside.shows.books import rules_of
from ringside.shows.known import notes_on_class
from ringside.shows.may import may

PER_PAGE = 100


@login_required
@require_GET
def desk(request: HttpRequest, slug: str) -> HttpResponse:
    show = access_show(request.user, slug)
    page = Paginator(queries.classes_of(show), PER_PAGE).get_page(request.GET.get("page"))
    classes = queries.compiled_many(page.object_list)
    template = "results/desk.html#rows" if request.headers.get("HX-Request") else "results/desk.html"
    return render(request, template, {"show": show, "classes": classes, "page": page, "stage": "results"})


@login_required
@require_GET
def one_class(request: HttpRequest, slug: str, class_id: int) -> HttpResponse:
    show_class = access_class(request.user, slug, class_id)
    show = show_class.show_breed.show
    found = queries.compiled(show_class)
    template = "results/class.html#card" if request.headers.get("HX-Request") else "results/class.html"
    context = {
        "show": show,
        "stage": "results",
        "found": found,
        "missing": actions.all_missing(found),
        "corrections": corrections_of(show_class) if found.state == "published" else [],
        "paper": PaperClass.objects.filter(show_class=show_class).select_related("judge", "typed_by").first(),
        "letters": last_letters(show_class),
        "notes": notes_on_class(rules_of(show), show_class.code),
        "may_publish": may(roles_of(request.user, show), "publish-results"),
        "may_correct": may(roles_of(request.user, show), "correct-results"),
    }
    return render(request, template, context)


@login_required
@require_POST
def publish(request: HttpRequest, slug: str, class_id: int) -> HttpResponse:
    show_class = access_class(request.user, slug, class_id, "publish-results")
    actions.publish_class(by=request.user, show_class=show_class, site=request.build_absolute_uri("/"))
    words = _("Published: {title}. Exhibitors can read their critiques now.")
    messages.success(request, words.format(title=queries.title_of(show_class)))
    return redirect("results:class", slug=slug, class_id=class_id)


@login_required
@require_POST
def publish_critiques(request: HttpRequest, slug: str, class_id: int) -> HttpResponse:
    show_class = access_class(request.user, slug, class_id, "publish-results")
    site = request.build_absolute_uri("/")
    count = actions.publish_critiques(by=request.user, show_class=show_class, site=site)
    words = ngettext(
        "{count} critique of this class is published.", "{count} critiques of this class are published.", count
    )
    messages.success(request, words.format(count=count))
    return redirect("results:class", slug=slug, class_id=class_id)


@login_required
@require_POST
def letters(request: HttpRequest, slug: str, class_id: int) -> HttpResponse:
    show_class = access_class(request.user, slug, class_id, "publish-results")
    sent = send_again(by=request.user, show_class=show_class, site=request.build_absolute_uri("/"))
    messages.success(request, ngettext("{count} letter sent.", "{count} letters sent.", sent).format(count=sent))
    return redirect("results:class", slug=slug, class_id=class_id)
