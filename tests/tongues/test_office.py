"""The office's pages speak its languages: no sentence of theirs is left in English, and the trade's words are used."""

import html
import re
from datetime import date

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import translation

from ringside.core import tongues
from ringside.core.doings import about_said, said, value_said
from ringside.core.models import AuditLine
from ringside.ring import held
from ringside.ring.models import Tablet
from ringside.ring.reasons import REASONS, reason, reason_said
from ringside.ring.wording import in_words
from ringside.shows.actions import appoint, take_role
from ringside.shows.appointing import appoint_part
from ringside.shows.conflicts import LIMIT_WORDS, limits
from ringside.shows.models import Role, Show
from tests.ring.test_taking_edits import edit, sheet_of, take
from tests.shows_for_tests import FIRST_DAY, SmallShow, small_show

pytestmark = pytest.mark.django_db
EVERY_LANGUAGE = pytest.mark.parametrize("language", tongues.translated())
TAG = re.compile(r"<[^>]+>")
FACT = re.compile(r"%\(\w+\)s|\{\w*\}|</?\w[^>]*>")


@pytest.fixture(autouse=True)
def english_again():
    yield
    translation.activate("en")


@pytest.fixture
def at() -> SmallShow:
    """A show that has something on every page: parts, held edits, a tablet with unsent ones, changes."""
    at = small_show()
    secretary = at.accounts["secretary"]
    secretary.runs_site = True
    secretary.save()
    told = {"judge_name": "nia", "judge_email": "nia@small.example", "day": FIRST_DAY}
    appoint(who=secretary, show=at.show, breed="boxer", ring="1", **told)
    appoint_part(who=secretary, show_breed=at.show_class.show_breed, sex="bitch", code="open", ring="3", **told)
    take_role(who=secretary, show=at.show, role_id=Role.objects.get(kind="writer").pk)
    at.entries[0].state = "withdrawn"
    at.entries[0].save()
    take(at, edit(sheet_of(at), "mark.croup", -2), edit(sheet_of(at, 1), "choice.bite", "undershot", number=2))
    Tablet.objects.update_or_create(
        ring=at.ring, device="tablet-9", defaults={"role": "judge", "seen_at": "2026-06-13T10:00:00Z", "unsent": 3}
    )
    return at


def office(at: SmallShow, language: str) -> Client:
    client = Client(headers={"accept-language": language})
    client.force_login(at.accounts["secretary"])
    return client


def text_of(page: str) -> str:
    return html.unescape(TAG.sub("\n", page))


def said_on(page: str, sentences: set[str]) -> list[str]:
    text = text_of(page)
    return [one for one in sentences if re.search(rf"\b{re.escape(one)}\b", text)]


def english_sentences(language: str) -> set[str]:
    """What the site says in English and otherwise in this language: sentences and labels of two words and more."""
    catalog, found = tongues.catalog_of(language), set()
    for one in catalog:
        ids, told = (one.id, one.string) if isinstance(one.id, tuple) else ((one.id,), (one.string,))
        pieces = {piece.strip(" .,;:") for text in ids if text for piece in FACT.split(text)}
        found |= {piece for piece in pieces if len(piece) > 9 and " " in piece and piece not in " ".join(told)}
    return found


def pages_of(at: SmallShow) -> dict[str, str]:
    breed, judge = at.show_class.show_breed, at.other_class.show_breed.judge_id
    base = "/office/small"
    names = ("", "details/", "classes/", "copy/", f"breeds/{breed.pk}/", f"judges/{judge}/replace/", "who-may/",
             "audit/", "rings/")  # fmt: skip
    more = {"papers": reverse("papers:desk", args=["small"]), "office": "/office/", "new": "/office/new/"}
    return {name: f"{base}/{name}" for name in names} | more


@EVERY_LANGUAGE
def test_no_sentence_of_the_offices_pages_is_left_in_english(at, language):
    client, english = office(at, language), english_sentences(language)
    for name, address in pages_of(at).items():
        answer = client.get(address)
        assert answer.status_code == 200, name
        assert said_on(answer.content.decode(), english) == [], name


def test_every_page_of_the_office_says_english_sentences_to_an_english_reader(at):
    """Without this, the check above could not fail."""
    client, english = office(at, "en"), english_sentences("de")
    for name, address in pages_of(at).items():
        assert said_on(client.get(address).content.decode(), english), name


@EVERY_LANGUAGE
def test_a_form_that_is_sent_back_says_why_in_the_language(at, language):
    client, english = office(at, language), english_sentences(language)
    show = {"name": "Small Show", "rules": "fci", "first_day": "2026-07-02", "last_day": "2026-07-01"}
    show |= {"entries_open": "2026-06-30", "entries_close": "2026-06-02"}
    breed = {"breed": "boxer", "judge_name": "x", "judge_email": "x@small.example", "ring": "1", "day": "2030-01-01"}
    sent = {"/office/new/": show, "/office/small/appoint/": breed, f"/office/small/roles/{_own_role(at)}/take/": {}}
    for address, told in sent.items():
        assert said_on(client.post(address, told).content.decode(), english) == [], address


def _own_role(at: SmallShow) -> int:
    return Role.objects.get(account=at.accounts["secretary"], kind="secretary").pk


# What show secretaries of the language call it: closing date of entries, steward, grade of a dog. Common practice of
# national bodies' schedules; from memory.
@pytest.mark.parametrize(
    ("language", "words"),
    [
        ("de", ("Meldeschluss ist am 17. Mai 2026.", "Samstag, 13. Juni 2026", "Ringsteward", "Boxer")),
        ("fr", ("Clôture des engagements le 17 mai 2026.", "samedi 13 juin 2026", "commissaire", "Juge")),
        ("es", ("La inscripción se cierra el 17 de mayo de 2026.", "sábado, 13 de junio de 2026", "comisario", "Juez")),
    ],
)
def test_the_set_up_page_uses_the_trades_words_and_the_languages_days(at, language, words):
    Show.objects.update(entries_close=date(2026, 5, 17))
    text = text_of(office(at, language).get("/office/small/").content.decode()).replace("\n", " ")
    for one in words:
        assert re.search(one, text, re.IGNORECASE), one


def test_a_role_that_may_not_is_told_so_in_its_language(at):
    client = Client(headers={"accept-language": "fr"})
    client.force_login(at.accounts["assistant"])
    answer = client.get("/office/small/details/")
    assert answer.status_code == 403
    told = (
        "Votre fonction dans cette exposition ne permet pas ceci\u00a0: modifier l'exposition. "
        "Adressez-vous au secrétariat."
    )
    assert told in html.unescape(answer.content.decode())


def test_a_page_that_breaks_says_so_in_the_readers_language(at):
    client = Client(headers={"accept-language": "de"}, raise_request_exception=False)
    client.force_login(at.accounts["secretary"])
    Show.objects.update(rules="no-such-rules")
    answer = client.get("/office/small/classes/")
    assert answer.status_code == 500
    assert '<html lang="de">' in answer.content.decode()
    assert "Hier ist etwas schiefgegangen" in answer.content.decode()


def test_the_reason_an_edit_is_held_for_is_kept_in_english_and_read_in_the_language(at):
    [waiting] = held.held_in(at.show)
    assert waiting.reason == "Number 1 was withdrawn."
    text = text_of(office(at, "es").get("/office/small/rings/").content.decode())
    assert "El número 1 se ha retirado." in text


@EVERY_LANGUAGE
@pytest.mark.parametrize("code", REASONS)
def test_every_reason_kept_in_english_is_found_again_with_its_facts(language, code):
    facts = {name: f"{name} 7" for name in re.findall(r"\{(\w+)\}", REASONS[code])}
    kept = reason(code, **facts)
    with translation.override("en"):
        assert reason_said(kept) == kept
    with translation.override(language):
        told = reason_said(kept)
    assert told != kept
    assert all(fact in told for fact in facts.values())


def test_a_reason_from_elsewhere_is_said_as_it_stands():
    with translation.override("de"):
        assert reason_said("Give a string here.") == "Give a string here."


@pytest.mark.parametrize(
    ("language", "field", "value", "words"),
    [
        # The names of the croup and of an undershot bite in the federation's standards of each language; from memory.
        ("de", "choice.bite", "undershot", "Gebiss: Vorbiss"),
        ("fr", "praise.croup", True, "croupe\u00a0: oui"),
        ("es", "mark.croup", 0, "grupa: como pide el estándar"),
        ("de", "signature", {"covers": []}, "die Unterschrift"),
        ("fr", "remark", "Bel ensemble.", "remarque\u00a0: Bel ensemble."),
    ],
)
def test_an_edit_is_read_in_the_language(at, language, field, value, words):
    with translation.override(language):
        about, what = in_words({"sheet": sheet_of(at), "field": field, "value": value})
    assert what == words
    assert about.endswith(" 1")


def test_an_audit_line_is_kept_as_codes_and_said_in_words(at):
    line = AuditLine.objects.filter(doing="appoint-part").get()
    assert line.detail["sex"] == "bitch"
    with translation.override("de"):
        assert line.words == "Teil einer Rasse zugeteilt"
        assert line.about_words.startswith("Rasse ")
        assert ("Geschlecht", "Hündin") in line.details
        assert (about_said("file:3 line:7"), value_said("vaccination", True)) == ("Datei 3, Zeile 7", "ja")
        assert said("nobody-knows-this") == "nobody knows this"


@EVERY_LANGUAGE
def test_the_words_of_the_judges_limits_are_in_the_language(language):
    assert {limit.words for limit in limits()} == set(LIMIT_WORDS)
    with translation.override(language):
        assert all(translation.gettext(words) != words for words in LIMIT_WORDS)


def test_a_detail_that_says_nothing_is_left_out_of_an_audit_line():
    line = AuditLine(doing="set-fee", detail={"amount": 0, "entered_on": None, "why": ""})
    assert line.details == [("amount", "0")]
