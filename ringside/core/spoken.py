"""What scripts of a page say (`t("...")` in static/js), told to the page in one language; `static/ring/say.js` says it.

The ring page has files of its own (`static/ring/words`), since a tablet changes its language without network.
"""

import json
import re
from functools import cache
from pathlib import Path
from typing import Any

from django.conf import settings
from django.utils.translation import get_language, gettext

SAID = re.compile(r'(?<![\w.])t\(\s*("(?:[^"\\]|\\.)*")')


@cache
def sentences() -> tuple[str, ...]:
    """The English sentences of the scripts, sorted; with both forms, "one|other", where they depend on a count."""
    scripts = (Path(settings.BASE) / "static" / "js").rglob("*.js")
    found = {json.loads(one[1]) for path in scripts for one in SAID.finditer(path.read_text(encoding="utf-8"))}
    return tuple(sorted(found))


def words_for_scripts() -> dict[str, Any]:
    """The language of the request, and the sentences in it as `speak` takes them; none in English."""
    language = get_language() or "en"
    said = {} if language == "en" else {one: _forms(gettext(one)) for one in sentences()}
    return {"language": language, "words": {"said": said, "findings": {}, "keeps_capitals": _keeps_capitals(language)}}


def _forms(said: str) -> str | dict[str, str]:
    one, is_counted, other = said.partition("|")
    return {"one": one, "other": other} if is_counted else said


@cache
def _keeps_capitals(language: str) -> bool:
    """Whether a name keeps its capital inside a sentence, as the language's file for the ring page says."""
    path = Path(settings.BASE) / "static" / "ring" / "words" / f"{language}.json"
    return path.exists() and bool(json.loads(path.read_text(encoding="utf-8")).get("keeps_capitals"))
