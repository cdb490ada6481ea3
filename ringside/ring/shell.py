"""The ring page as a tablet keeps it: its files by name, and the service worker that serves them without network."""

import hashlib
import json
import os
import re
from pathlib import Path

from django.conf import settings
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.templatetags.static import static
from django.urls import reverse
from django.views.decorators.cache import cache_control
from django.views.decorators.http import require_GET

from scoring.standards.translated import languages

FILES = ("css/tokens.css", "css/ring.css", "img/mark.svg", "ring/page.js")
LATER_STYLES = ("css/site.css", "css/photos.css")
LATER = ("ring/photos.js", "js/marking/ring-page.js")
ANY_IMPORT = re.compile(r"""^import (?:[^;]*?from )?"(\.{1,2}/[\w./-]+\.js)";""", re.MULTILINE | re.DOTALL)


def files() -> list[str]:
    """The addresses of everything the ring page loads; its modules come as one (`core/modules.py`)."""
    return [static(name) for name in FILES]


def later_files() -> list[str]:
    """What the page fetches and keeps only once it stands: photos, their marking page and what that loads."""
    kept = set(files())
    return [name for name in map(static, (*LATER_STYLES, *later_modules())) if name not in kept]


def later_modules() -> list[str]:
    """Everything that the later modules import, by its name under the folder of static files."""
    root, found, waiting = Path(settings.BASE) / "static", set[str](), list(LATER)
    while waiting:
        name = waiting.pop()
        if name not in found:
            found.add(name)
            imported = ANY_IMPORT.findall((root / name).read_text(encoding="utf-8"))
            waiting += [os.path.normpath(f"{os.path.dirname(name)}/{path}") for path in imported]
    return sorted(found)


def words() -> list[tuple[str, str]]:
    """By language, the address of the page's own words; a tablet keeps those of the language chosen on it."""
    return [(code, static(f"ring/words/{code}.json")) for code in languages()]


@require_GET
@cache_control(no_cache=True)
def shell(request: HttpRequest) -> HttpResponse:
    """The page without any ring or person in it."""
    return render(request, "ring/ring.html", {"words": words()})


@require_GET
@cache_control(no_cache=True)
def worker(request: HttpRequest) -> HttpResponse:
    """One address for ever; its content changes with the files that the page names, and only then."""
    names = files()
    later = later_files()
    version = hashlib.sha256(json.dumps([names, later, words(), settings.FIELD]).encode()).hexdigest()[:12]
    context = {
        "shell": reverse("ring:shell"),
        "photo_shell": reverse("ring-photos:shell"),
        "version": version,
        "files": json.dumps(names),
        "later": json.dumps(later),
    }
    return render(request, "ring/worker.js", context, content_type="text/javascript")
