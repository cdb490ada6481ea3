"""French keeps a space before its signs that no line breaks at: a no-break space before ":" and "»" and behind "«", a
narrow one before ";", "!" and "?".

Source: Imprimerie nationale, Lexique des règles typographiques; from memory.
"""

import json
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from django.conf import settings
from django.template import Context, engines
from django.utils import translation

from ringside.core import tongues
from ringside.core.sentences import apart, colon

BASE = Path(settings.BASE)
WIDE, NARROW = "\u00a0", "\u202f"
LOOSE = re.compile(r"[^\S\u00a0](?=[:»])|«(?!\u00a0)|[^\S\u202f](?=[;!?])|\w(?=[;!?»]|:(?!\S))")
FILES = [path for room in ("ringside", "scoring", "static") for path in sorted((BASE / room).rglob("fr.*"))]
# A name or a value that is followed by a sign past gettext: `{{ name }}: {{ value }}`, `${name}: ${value}`.
TRANSLATED = re.compile(r"{% blocktranslate\b.*?{% endblocktranslate %}", re.S)
BARE_IN_A_TEMPLATE = re.compile(r"(?:}}|%}|</\w+>)[:;](?=[ <])")
BARE_IN_A_SCRIPT = re.compile(r"}[:;] \$\{")


def texts(words: Any) -> Iterator[str]:
    if isinstance(words, str):
        yield words
    elif isinstance(words, dict):
        for each in words.values():
            yield from texts(each)
    elif isinstance(words, list | tuple):
        for each in words:
            yield from texts(each)


def loose(words: Any) -> list[str]:
    return [text for text in texts(words) if LOOSE.search(text)]


def test_no_message_has_a_loose_sign():
    assert loose([one.string for one in tongues.catalog_of("fr") if one.id]) == []


def test_every_french_file_of_words_is_looked_at():
    assert {path.suffix for path in FILES} == {".toml", ".json"}
    assert len(FILES) == len(list(BASE.joinpath("scoring").rglob("de.toml"))) + len(
        [*BASE.joinpath("ringside").rglob("de.toml"), *BASE.joinpath("static").rglob("de.json")]
    )


@pytest.mark.parametrize("path", FILES, ids=lambda path: str(path.relative_to(BASE)))
def test_no_file_of_words_has_a_loose_sign(path):
    told = path.read_text(encoding="utf-8")
    assert loose(json.loads(told) if path.suffix == ".json" else tomllib.loads(told)) == []


@pytest.mark.parametrize("text", ["a : b", "a: b", "« a »", "a ;", "a;", "a !", f"a{WIDE}?", f"a{NARROW}:"])
def test_a_loose_sign_is_seen(text):
    assert loose([text]) == [text]


@pytest.mark.parametrize("text", [f"a{WIDE}: b", f"«{WIDE}a{WIDE}»", f"a{NARROW}; b", "10:30", "https://here.example/"])
def test_what_is_written_well_is_let_be(text):
    assert loose([text]) == []


def test_what_is_put_together_has_its_spaces_too():
    template = engines["django"].from_string('{{ one }}{% translate ":" %} {{ two }}{% translate ";" %} {{ one }}')
    with translation.override("fr"):
        assert colon("Juge", "Ada") == f"Juge{WIDE}: Ada"
        assert apart(["a, b", "c"]) == f"a, b{NARROW}; c"
        assert template.template.render(Context({"one": "a", "two": "b"})) == f"a{WIDE}: b{NARROW}; a"


def test_no_template_and_no_script_puts_a_sign_behind_a_name_past_gettext():
    found = {
        path.name: BARE_IN_A_TEMPLATE.findall(TRANSLATED.sub("", path.read_text(encoding="utf-8")))
        for path in BASE.glob("templates/**/*.html")
    } | {path.name: BARE_IN_A_SCRIPT.findall(path.read_text(encoding="utf-8")) for path in BASE.glob("static/**/*.js")}
    assert {name: signs for name, signs in found.items() if signs} == {}
