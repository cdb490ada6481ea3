"""The ring page as a tablet keeps it: its files by name, and the service worker that serves them without network."""

import hashlib
import json
import re
from pathlib import Path

from django.conf import settings
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.templatetags.static import static
from django.urls import reverse
from django.views.decorators.cache import cache_control
from django.views.decorators.http import require_GET

STYLES = ("css/tokens.css", "css/ring.css", "img/mark.svg")
ENTRY = "page.js"
IMPORT = re.compile(r"""^import [^;]*?from "\./([\w-]+\.js)";""", re.MULTILINE | re.DOTALL)


def files() -> list[str]:
    """The addresses of everything the ring page loads, styles and modules."""
    return [static(name) for name in (*STYLES, *(f"ring/{module}" for module in modules()))]


def modules() -> list[str]:
    """The modules that the page's entry imports, and theirs."""
    folder, found, waiting = Path(settings.BASE) / "static" / "ring", set[str](), [ENTRY]
    while waiting:
        name = waiting.pop()
        if name not in found:
            found.add(name)
            waiting += IMPORT.findall((folder / name).read_text(encoding="utf-8"))
    return sorted(found)


@require_GET
@cache_control(no_cache=True)
def shell(request: HttpRequest) -> HttpResponse:
    """The page without any ring or person in it."""
    return render(request, "ring/ring.html")


@require_GET
@cache_control(no_cache=True)
def worker(request: HttpRequest) -> HttpResponse:
    """One address for ever; its content changes with the files it names, and only then."""
    names = files()
    version = hashlib.sha256(json.dumps([names, settings.FIELD]).encode()).hexdigest()[:12]
    context = {"shell": reverse("ring:shell"), "version": version, "files": json.dumps(names)}
    return render(request, "ring/worker.js", context, content_type="text/javascript")
