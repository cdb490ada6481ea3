"""The results room in the languages of the site: what is kept stays English, what is read is the reader's."""

from pathlib import Path

import pytest
from django.conf import settings
from django.test import Client
from django.utils import translation

from ringside.core import tongues
from ringside.core.denied import NotNow
from ringside.core.tables import by_language
from ringside.results import day_actions, final_actions
from ringside.results.award_corrections import award_changes_of, correct_award
from ringside.results.final_actions import name_judge
from ringside.results.models import DayChange, Final
from ringside.results.moves import all_reasons
from ringside.results.out_awards import awards_table
from ringside.results.points import COUNTS, count_name
from ringside.results.still_missing import lacks_of
from ringside.results.wording import PRESENCES, group_name, result_in
from scoring.critique.lexicon import LANGUAGES
from scoring.rules.loader import codes, load
from tests.results.test_finals import at as finals_at
from tests.results.test_finals import hold
from tests.shows_for_tests import small_show

pytestmark = pytest.mark.django_db
decided = finals_at


@pytest.fixture
def at():
    return small_show()


@pytest.fixture
def office(at) -> Client:
    client = Client(headers={"accept-language": "de"})
    client.force_login(at.accounts["secretary"])
    return client


@pytest.fixture(autouse=True)
def english_again():
    yield
    translation.activate("en")


@pytest.mark.parametrize("language", tongues.translated())
def test_every_reason_presence_count_and_group_has_words(language):
    counts = {name for code in codes() if (points := load(code).points) for name in points.counts}
    assert counts == set(COUNTS)
    said = [count_name(name) for name in counts]
    with translation.override(language):
        translated = [count_name(name) for name in counts]
        reasons = {one.code: one.words for one in (*all_reasons(), *all_reasons("withdrawal"))}
        # The letters to owners say the same word for who was not judged.
        letters = by_language(Path(settings.BASE) / "ringside/results/letter_words")
        assert {code: str(PRESENCES[code]) for code in letters[language]["presences"]} == letters[language]["presences"]
        assert all(group_name(group) for code in codes() for group in load(code).groups)
    assert set(said).isdisjoint(translated)
    english = {one.code: one.words for one in (*all_reasons(), *all_reasons("withdrawal"))}
    assert all(reasons[code] != words for code, words in english.items())


def test_a_change_of_the_day_is_kept_in_english_and_read_in_each_language(at, office):
    entry = at.entries[0]
    with translation.override("de"):
        day_actions.withdraw_entry(who=at.accounts["secretary"], entry=entry, reason="ill-or-injured")
    assert DayChange.objects.get().before == "Boxer, open class, dogs"
    page = office.get("/office/small/results/day/").content.decode()
    assert "zurückgezogen: Boxer, Offene Klasse, Rüden" in page
    assert "der Hund ist krank oder verletzt" in page
    page = Client(headers={"accept-language": "en"})
    page.force_login(at.accounts["secretary"])
    assert "withdrawn: Boxer, open class, dogs" in page.get("/office/small/results/day/").content.decode()


def test_a_class_that_is_gone_is_said_as_it_was_kept(at, office):
    DayChange.objects.create(entry=at.entries[0], kind="moved", before="Junior", after="Boxer, open class, dogs")
    page = office.get("/office/small/results/day/").content.decode()
    assert "in eine andere Klasse umgestellt: Junior → Boxer, Offene Klasse, Rüden" in page


def test_a_final_is_signed_in_another_language_too(decided):
    group = hold(decided)
    told = {"places": [4, 1], "absent": [], "is_signed": True}
    with translation.override("de"):
        with pytest.raises(NotNow) as refused:
            final_actions.record_final(who=decided.accounts["assistant"], final=group, **told)
        assert str(refused.value) == (
            "Diese Endausscheidung kann noch nicht unterschrieben werden. Es fehlt: wer sie richtet."
        )
        name_judge(who=decided.accounts["secretary"], final=group, name="Jo Finch", email="")
        final_actions.record_final(who=decided.accounts["assistant"], final=Final.objects.get(pk=group.pk), **told)
        assert Final.objects.get(pk=group.pk).is_signed
        # The group's name as the federation's German list of breeds says it; from memory.
        stand = final_actions.stands_of(Final.objects.get(pk=group.pk))
        assert stand.title == "Bester der Gruppe (BIG): Pinscher und Schnauzer, Molossoide, Schweizer Sennenhunde"


def test_an_owner_reads_a_corrected_award_in_the_own_language(decided):
    correct_award(
        who=decided.accounts["secretary"], show_breed=decided.show_class.show_breed, code="best-of-breed", number=2,
        why="Verschrieben.",
    )  # fmt: skip
    with translation.override("de"):
        told = award_changes_of(decided.entries[:2])
    assert [words.partition(". ")[0] for one in told.values() for words in one] == [
        "Hat nicht mehr: Boxer: Bester der Rasse (BOB)", "Hat jetzt: Boxer: Bester der Rasse (BOB)",
    ]  # fmt: skip


def test_an_award_of_one_sex_refuses_the_other_in_words(decided):
    bitch = decided.entries[1]
    bitch.dog.sex = "bitch"
    bitch.dog.save()
    with pytest.raises(NotNow, match="Number 2 is a bitch, and this award is for dogs"):
        correct_award(
            who=decided.accounts["secretary"], show_breed=decided.show_class.show_breed, code="cacib-dog", number=2,
            why="x",
        )  # fmt: skip


def test_a_file_of_awards_says_the_same_whoever_takes_it_away(decided):
    english = awards_table(decided.show, "csv")
    assert b"Best of breed" in english
    with translation.override("fr"):
        assert awards_table(decided.show, "csv") == english


def test_what_is_missing_is_said_with_its_number_in_the_language(at):
    for language, words in (
        ("en", "2 classes not begun"), ("de", "2 Klassen nicht begonnen"), ("fr", "2 classes pas commencées"),
        ("es", "2 clases sin empezar"),
    ):  # fmt: skip
        with translation.override(language):
            assert [one.words for one in lacks_of(at.show)] == [words]


@pytest.mark.parametrize(
    ("language", "presence", "words"),
    [
        ("de", "absent", "Nummer 1 ist nicht erschienen."),
        ("fr", "excused", "Le numéro 1 est excusé."),
        ("es", "absent", "El número 1 está ausente."),
    ],
)
def test_the_desk_answers_in_the_language_of_who_works_there(at, language, presence, words):
    client = Client(headers={"accept-language": language})
    client.force_login(at.accounts["secretary"])
    where = f"/office/small/results/day/entries/{at.entries[0].pk}/presence/"
    assert words in client.post(where, {"presence": presence}, follow=True).content.decode()


@pytest.mark.parametrize("sex", ["dog", "bitch"])
@pytest.mark.parametrize("language", LANGUAGES)
def test_a_result_agrees_with_the_dog_and_leaves_no_sign_of_its_making(language, sex):
    for place in (None, *range(1, 9)):
        said = result_in(language, sex, "excellent", place)
        assert said[0].isupper()
        assert not set("<>|{}") & set(said), said


# Agreement of the participle, common grammar: the grade itself stays as the federation writes it.
def test_a_bitch_is_placed_in_the_feminine():
    assert result_in("fr", "bitch", "excellent", 1) == "Excellent, classée première"
    assert result_in("fr", "dog", "excellent", 1) == "Excellent, classé premier"
    assert result_in("es", "bitch", "excellent", 2) == "Excelente, segunda clasificada"
