"""The results desk: every class as it stands, one class in full, publishing."""

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_GET, require_POST

from ringside.results import actions, queries
from ringside.shows.access import access_class, access_show

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
    context = {"show": show, "found": found, "missing": actions.all_missing(found), "stage": "results"}
    return render(request, template, context)


@login_required
@require_POST
def publish(request: HttpRequest, slug: str, class_id: int) -> HttpResponse:
    show_class = access_class(request.user, slug, class_id, "publish-results")
    actions.publish_class(by=request.user, show_class=show_class)
    messages.success(request, f"Published: {queries.title_of(show_class)}. Exhibitors can read their critiques now.")
    return redirect("results:class", slug=slug, class_id=class_id)


@login_required
@require_POST
def publish_critiques(request: HttpRequest, slug: str, class_id: int) -> HttpResponse:
    show_class = access_class(request.user, slug, class_id, "publish-results")
    count = actions.publish_critiques(by=request.user, show_class=show_class)
    messages.success(request, f"{count} critiques of this class are published.")
    return redirect("results:class", slug=slug, class_id=class_id)
