"""No page says a sentence past gettext: bare English in a template, a form, a message or a refusal is found here."""

import ast
import re
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path

import pytest
from django.conf import settings
from django.template.base import Lexer, Token, TokenType

from ringside.core.doings import DETAILS, DOINGS, THINGS

BASE = Path(settings.BASE)
# Rooms whose pages are still English in part. A room is taken out when its pages speak all languages.
NOT_YET: set[str] = set()
# One page for everybody, kept on the tablet: it says its words itself (static/ring/say.js).
SAYS_ITSELF = {"ring/ring.html", "photos/ring_mark.html"}
# The program's own name, and the code of a language.
NAMES = {"Ringside", "en"}
SAID_ASIDE = {"aria-label", "alt", "placeholder", "title", "label"}
GETTEXT = {"_", "gettext", "ngettext", "pgettext", "gettext_lazy", "pgettext_lazy", "ngettext_lazy"}
WORD = re.compile(r"[^\W\d_]{2,}")
IN_FILTER = re.compile(r"\|(?:default|default_if_none|pluralize|yesno):(['\"])(?P<words>.*?)\1")


def room_of(path: Path, root: str) -> str:
    return path.relative_to(BASE / root).parts[0]


TEMPLATES = [
    path
    for path in sorted((BASE / "templates").rglob("*.html"))
    if room_of(path, "templates") not in NOT_YET and str(path.relative_to(BASE / "templates")) not in SAYS_ITSELF
]
MODULES = [
    path
    for path in sorted((BASE / "ringside").rglob("*.py"))
    if room_of(path, "ringside") not in NOT_YET and not {"migrations", "management"} & set(path.parts)
]


class Text(HTMLParser):
    """What a page says beside its tags: its text, and the attributes that are read out."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []
        self.silent = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.silent += tag in ("script", "style", "code")
        self.found += [value for name, value in attrs if name in SAID_ASIDE and value]

    def handle_endtag(self, tag: str) -> None:
        self.silent -= tag in ("script", "style", "code")

    def handle_data(self, data: str) -> None:
        if not self.silent:
            self.found.append(data)


def bare_in(source: str) -> list[str]:
    """The English words of a template that no translate tag holds."""
    page, in_filters, is_said, is_class = "", [], False, False
    for token in Lexer(source).tokenize():
        command = token.contents.split(" ", 1)[0] if token.token_type == TokenType.BLOCK else ""
        if command in ("blocktranslate", "endblocktranslate", "comment", "endcomment"):
            is_said = not command.startswith("end")
        if token.contents == "block body_class" or (is_class and command == "endblock"):
            is_said = is_class = not is_class
        if token.token_type == TokenType.TEXT and not is_said:
            page += token.contents
        in_filters += _in_filters(token)
    text = Text()
    text.feed(page)
    text.close()
    return [" ".join(words.split()) for words in (*text.found, *in_filters) if _says_something(words)]


def _in_filters(token: Token) -> list[str]:
    if token.token_type not in (TokenType.VAR, TokenType.BLOCK):
        return []
    return [found["words"] for found in IN_FILTER.finditer(token.contents)]


def _says_something(words: str) -> bool:
    return bool(set(WORD.findall(words)) - NAMES)


@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: str(path.relative_to(BASE / "templates")))
def test_a_template_has_no_words_outside_a_translate_tag(path):
    assert bare_in(path.read_text(encoding="utf-8")) == []


@pytest.mark.parametrize(
    ("source", "found"),
    [
        ("<p>No dog yet.</p>", ["No dog yet."]),
        ('<nav aria-label="Pages"></nav>', ["Pages"]),
        ('<td>{{ judge|default:"no judge yet" }}</td>', ["no judge yet"]),
        ('class{{ n|pluralize:"es" }}', ["class", "es"]),
        ('{{ judge|default:_("no judge yet") }}', []),
        ('<p class="lead">{% translate "No dog yet." %} {{ dog }} 12 · A4</p>', []),
        ("{% blocktranslate %}Number {{ n }}{% endblocktranslate %}{# a note #}", []),
        ("{% block body_class %}wide-page{% endblock %}", []),
        ("<script>let words</script><code>manage.py</code>", []),
    ],
)
def test_bare_words_are_found_and_translated_ones_are_not(source, found):
    assert bare_in(source) == found


def bare_calls(source: str) -> Iterator[str]:
    """Sentences in Python that go to a reader as they stand: messages, labels, helps, refusals with facts glued in."""
    for call in (node for node in ast.walk(ast.parse(source)) if isinstance(node, ast.Call)):
        name = ast.unparse(call.func)
        if name.startswith("messages.") and len(call.args) > 1:
            yield from _bare(call.args[1])
        if name in ("Denied", "NotNow") and call.args and isinstance(call.args[0], ast.JoinedStr):
            yield ast.unparse(call.args[0])
        if name.endswith("ValidationError") and call.args:
            yield from _bare(call.args[0])
        if name.startswith("forms."):
            for keyword in call.keywords:
                yield from _bare(keyword.value) if keyword.arg in ("label", "help_text") else ()


def _bare(node: ast.expr) -> Iterator[str]:
    if isinstance(node, ast.JoinedStr) or (isinstance(node, ast.Constant) and isinstance(node.value, str)):
        yield ast.unparse(node)


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(BASE / "ringside")))
def test_no_message_stands_inside_an_f_string(path):
    """Where the reader of Python's tokens does not see it, and so no message file gets it."""
    joined = [node for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))) if isinstance(node, ast.JoinedStr)]
    calls = [node for one in joined for node in ast.walk(one) if isinstance(node, ast.Call)]
    hidden = [
        ast.unparse(call)
        for call in calls
        if ast.unparse(call.func) in GETTEXT and call.args and isinstance(call.args[0], ast.Constant)
    ]
    assert hidden == []


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(BASE / "ringside")))
def test_a_module_hands_no_sentence_on_without_gettext(path):
    assert list(bare_calls(path.read_text(encoding="utf-8"))) == []


@pytest.mark.parametrize(
    ("source", "count"),
    [
        ('messages.success(request, "Done.")', 1),
        ('messages.error(request, f"{n} done.")', 1),
        ('raise Denied(f"Not {n}.")', 1),
        ('raise forms.ValidationError("Not so.")', 1),
        ('name = forms.CharField(label="Name", help_text=_("As on papers."))', 1),
        ('raise Denied("Not {n}.", n=1)', 0),
        ('messages.success(request, _("Done."))', 0),
    ],
)
def test_bare_sentences_of_a_module_are_found_and_translated_ones_are_not(source, count):
    assert len(list(bare_calls(source))) == count


def recorded() -> Iterator[ast.Call]:
    for path in (BASE / "ringside").rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and ast.unparse(node.func) in ("record", "audit.record"):
                yield node


def test_every_doing_and_detail_of_an_audit_line_has_words():
    keywords = [keyword for call in recorded() for keyword in call.keywords]
    doings = {one.value.value for one in keywords if one.arg == "doing" and isinstance(one.value, ast.Constant)}
    names = {one.arg for one in keywords if one.arg} - {"who", "doing", "show_id", "about"}
    assert len(doings) > 50
    assert doings - set(DOINGS) == set()
    assert names - {*DETAILS, *THINGS} == set()
