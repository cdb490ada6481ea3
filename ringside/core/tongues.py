"""The interface's languages: what there is to translate, and the files that translate it.

English is written in the code and the templates; `locale/<code>/LC_MESSAGES/django.po` says each message in another
language. A folder there is a language of the site. Compiled beside it (`.mo`) by `manage.py prepare`.
"""

import io
import os
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from babel.messages.catalog import Catalog
from babel.messages.extract import DEFAULT_KEYWORDS, extract
from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po, write_po
from django.conf import settings
from django.utils.translation.template import templatize

from ringside.core import doings, spoken
from ringside.core.sentences import SENTENCES
from scoring.rules.loader import codes, load, overlay_codes
from scoring.standards.loader import codes as breeds
from scoring.standards.loader import load as breed_of

# A refusal's sentence is translated where it is raised: `core.denied`.
KEYWORDS = {
    **DEFAULT_KEYWORDS,
    "gettext_lazy": None,
    "gettext_noop": None,
    "ngettext_lazy": (1, 2),
    "pgettext_lazy": ((1, "c"), 2),
    "Denied": None,
    "NotNow": None,
    "NotTakenIn": None,
    "BadZip": None,
}
DATA = "data"
Message = str | tuple[str, str]


def file_of(language: str) -> Path:
    return Path(settings.BASE) / "locale" / language / "LC_MESSAGES" / "django.po"


def translated() -> list[str]:
    """The codes of the languages beside English."""
    return sorted(folder.name for folder in (Path(settings.BASE) / "locale").iterdir() if folder.is_dir())


def catalog_of(language: str) -> Catalog:
    return read_po(io.BytesIO(file_of(language).read_bytes()), locale=language)


def compile_all() -> None:
    """Writes each language's `.mo` where it is missing or older than its `.po`; whole or not at all."""
    for language in translated():
        source = file_of(language)
        target = source.with_suffix(".mo")
        if target.exists() and target.stat().st_mtime >= source.stat().st_mtime:
            continue
        written = source.with_suffix(f".{os.getpid()}.mo")
        with written.open("wb") as out:
            write_mo(out, catalog_of(language))
        written.replace(target)


def renew() -> dict[str, int]:
    """Brings every language's file up to the messages there are now; how many each still lacks."""
    wanted, lacking = messages(), {}
    for language in translated():
        catalog = catalog_of(language) if file_of(language).exists() else Catalog(locale=language)
        catalog.update(wanted, no_fuzzy_matching=True, update_header_comment=False, update_creation_date=False)
        catalog.obsolete.clear()
        with file_of(language).open("wb") as out:
            write_po(out, catalog, width=120, sort_output=True, omit_header=False, no_location=True)
        lacking[language] = len(lacking_in(catalog))
    return lacking


def lacking_in(catalog: Catalog) -> list[Message]:
    """The messages without words, or with a plural form missing."""
    return [one.id for one in catalog if (one.id and not all(_parts(one.string))) or (one.fuzzy and one.id)]


def _parts(string: Any) -> tuple[str, ...]:
    return string if isinstance(string, tuple | list) else (string,)


def messages() -> Catalog:
    """Everything the site says, in English, each message with the files that say it."""
    found = Catalog()
    base = Path(settings.BASE)
    for path in sorted((base / "ringside").rglob("*.py")):
        _add(found, path.relative_to(base), path.read_bytes())
    for path in sorted((base / "templates").rglob("*.html")):
        source = templatize(path.read_text(encoding="utf-8"), origin=str(path))
        # What a template leaves behind are rows of X without Python's indents.
        _add(found, path.relative_to(base), "\n".join(map(str.strip, source.splitlines())).encode())
    for context, words in _of_data():
        found.add(words, locations=[(DATA, 0)], context=context)
    return found


def _add(catalog: Catalog, name: Path, source: bytes) -> None:
    for line, message, comments, context in extract("python", io.BytesIO(source), keywords=KEYWORDS):
        # A refusal put together of other sentences has none of its own here.
        if str(message).strip():
            catalog.add(message, locations=[(str(name), line)], auto_comments=comments, context=context)


def _of_data() -> Iterator[tuple[str | None, str]]:
    """Sentences of findings and of scripts, codes of audit lines, and the names that rules and standards give."""
    for words in doings.words():
        yield doings.CONTEXT, words
    for words in (*SENTENCES.values(), *spoken.sentences(), "dog", "bitch"):
        yield None, words
    for book in map(load, codes()):
        for rule in book.classes:
            yield "class", rule.name.lower()
        for named in (*book.grades, *book.awards):
            yield None, named.name
        for grade in book.grades:
            yield None, grade.code.replace("-", " ")
    for book in map(load, codes()):
        for overlay in overlay_codes(book.code):
            yield None, load(book.code, None, (overlay,)).name.removeprefix(f"{book.name}, ")
    for standard in map(breed_of, breeds()):
        for named in (standard, *standard.varieties):
            yield None, named.name
    yield from _of_books()
    for name in sorted({point.code.replace("-", " ") for breed in breeds() for point in breed_of(breed).points}):
        yield None, name


def _of_books() -> Iterator[tuple[str | None, str]]:
    """The names that rules give to groups and titles, and those of classes, grades and awards that overlays add."""
    for book in map(load, codes()):
        yield from ((None, named.name) for named in (*book.groups, *book.titles, *book.documents, *book.competitions))
        for overlay in (load(book.code, None, (code,)) for code in overlay_codes(book.code)):
            yield from (("class", rule.name.lower()) for rule in overlay.classes)
            yield from ((None, named.name) for named in (*overlay.grades, *overlay.awards, *overlay.titles))
            yield from ((None, grade.code.replace("-", " ")) for grade in overlay.grades)
