"""The results pages speak the site's languages: of a show with something on every page, no sentence is left English."""

import pytest

from ringside.results import corrections, day_actions
from ringside.results.actions import publish_class
from ringside.results.award_corrections import correct_award
from ringside.results.corrections import Result
from ringside.results.models import Final, Report
from tests.results.test_finals import at as decided
from tests.results.test_finals import hold
from tests.results.writing import judge_and_sign
from tests.shows_for_tests import SmallShow
from tests.tongues.test_office import EVERY_LANGUAGE, english_again, english_sentences, office, said_on

pytestmark = pytest.mark.django_db
with_awards, back_in_english = decided, english_again
RULES = pytest.mark.parametrize("rules", ["fci", "australia", "canada", "united-kingdom"])


@pytest.fixture
def full(with_awards) -> SmallShow:
    """Published and corrected classes and awards, a final to record, changes of the day, a report."""
    at, who = with_awards, with_awards.accounts["secretary"]
    day_actions.withdraw_entry(who=who, entry=at.other_entry, reason="ill-or-injured")
    day_actions.take_back_withdrawal(who=who, entry=at.other_entry, note="x")
    judge_and_sign(at)
    publish_class(by=who, show_class=at.show_class)
    swapped = {
        at.entries[0].pk: Result(grade="very-good", place=2),
        at.entries[1].pk: Result(grade="excellent", place=1),
    }
    corrections.correct_class(who=who, show_class=at.show_class, results=swapped, why="y")
    correct_award(who=who, show_breed=at.show_class.show_breed, code="best-of-breed", number=2, why="z")
    hold(at)
    Report.objects.create(show=at.show, kind="bite", text="q", entry=at.entries[0])
    return at


def addresses(at: SmallShow) -> list[str]:
    breed, final = at.show_class.show_breed_id, Final.objects.get(award="best-in-group", group="2").pk
    both = (at.show_class.pk, at.other_class.pk)
    names = ["", "awards/", f"awards/{breed}/", f"awards/{breed}/correct/", f"awards/{breed}/cancel/", "missing/",
             "points/", "finals/", "finals/groups/", f"finals/{final}/", f"finals/{final}/correct/", "day/",
             "day/add/", "day/reports/"]  # fmt: skip
    names += [name for pk in both for name in (f"day/{pk}/", f"{pk}/", f"{pk}/correct/")]
    return [f"/office/small/results/{name}" for name in names]


@EVERY_LANGUAGE
@RULES
def test_no_sentence_of_the_results_pages_is_left_in_english(full, language, rules):
    full.show.rules = rules
    full.show.save()
    client, english = office(full, language), english_sentences(language)
    for address in addresses(full):
        answer = client.get(address)
        # Other bodies have another group's final, and the page says so.
        assert answer.status_code == 200 or (rules != "fci" and "/finals/" in address), address
        assert said_on(answer.content.decode(), english) == [], address


def test_every_results_page_says_english_sentences_to_an_english_reader(full):
    """Without this, the check above could not fail."""
    client, english = office(full, "en"), english_sentences("de")
    for address in addresses(full):
        assert said_on(client.get(address).content.decode(), english), address
