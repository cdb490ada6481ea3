"""Publishing tells the owners by letter: once an account, in its language, and never at the cost of publishing."""

import pytest
from django.core import mail
from django.test import Client

from ringside.core.models import AuditLine
from ringside.dogs.models import Ownership
from ringside.people.actions import choose_language
from ringside.results import actions
from ringside.results.letters import last_letters
from ringside.results.models import Publication
from tests.results.writing import Pen, judge_and_sign
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]
SITE = "https://show.example/"
NO_SERVER = "django.core.mail.backends.smtp.EmailBackend"


@pytest.fixture
def at() -> SmallShow:
    at = small_show()
    judge_and_sign(at)
    first = at.entries[0].pk
    pen = Pen(at)
    pen.write(f"entry:{first}", {"mark.croup": 1, "mark.topline": 0})
    pen.sign(f"entry:{first}")
    return at


@pytest.fixture
def publish(at, django_capture_on_commit_callbacks):
    def publish(doing=actions.publish_class):
        with django_capture_on_commit_callbacks(execute=True):
            doing(by=at.accounts["secretary"], show_class=at.show_class, site=SITE)

    return publish


def letter_to(name: str) -> mail.EmailMessage:
    [found] = [letter for letter in mail.outbox if letter.to == [f"{name}@small.example"]]
    return found


def test_each_owner_gets_one_letter_with_own_dogs_only(at, publish):
    publish()
    assert sorted(letter.to[0] for letter in mail.outbox) == [
        "ada@small.example", "ben@small.example", "cleo@small.example",
    ]  # fmt: skip
    body = letter_to("ada").body
    assert "Dog 1, number 1: Excellent, placed first." in body
    assert "Dog 2" not in body
    assert "https://show.example/critiques/" in body


def test_a_letter_leads_to_the_critique_in_the_language_of_the_account(at, publish):
    choose_language(account=at.accounts["ada"], language="de")
    publish()
    letter = letter_to("ada")
    assert "Dog 1, Nummer 1: Vorzüglich, erster Platz." in letter.body
    critique = actions.Critique.objects.get(entry=at.entries[0], language="de")
    assert f"https://show.example/critiques/{critique.pk}/" in letter.body


def test_an_owner_of_two_dogs_of_a_class_gets_one_letter_about_both(at, publish):
    Ownership.objects.filter(dog=at.entries[1].dog).update(person=at.entries[0].dog.owners.get())
    publish()
    assert len(mail.outbox) == 2
    assert "Dog 1, Dog 2" in letter_to("ada").subject


def test_a_critique_signed_later_is_told_to_its_owner_alone(at, publish):
    publish()
    mail.outbox.clear()
    pen = Pen(at)
    pen.write(f"entry:{at.entries[1].pk}", {"mark.croup": 0})
    pen.sign(f"entry:{at.entries[1].pk}")
    publish(actions.publish_critiques)
    assert [letter.to for letter in mail.outbox] == [["ben@small.example"]]


def test_nothing_is_sent_where_publishing_is_refused(at, publish):
    publish()
    mail.outbox.clear()
    with pytest.raises(actions.NotNow):
        publish()
    assert mail.outbox == []


def test_a_mail_server_that_is_away_leaves_the_class_published_and_is_shown_to_the_secretary(at, publish, settings):
    settings.EMAIL_BACKEND, settings.EMAIL_HOST, settings.EMAIL_PORT = NO_SERVER, "127.0.0.1", 1
    publish()
    assert Publication.objects.filter(show_class=at.show_class).exists()
    assert len(last_letters(at.show_class).failed) == 3
    assert "@" not in str(AuditLine.objects.get(doing="send-letters").detail)
    client = Client()
    client.force_login(at.accounts["secretary"])
    page = f"/office/small/results/{at.show_class.pk}/"
    assert "3 could not be sent" in client.get(page).content.decode()
    settings.EMAIL_BACKEND = "django.core.mail.backends.locmem.EmailBackend"
    client.post(f"{page}letters/")
    assert len(mail.outbox) == 3
    assert last_letters(at.show_class).failed == ()
