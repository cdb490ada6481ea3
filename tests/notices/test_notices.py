"""Exhibitors are told number, ring and time: once each, in their language, again when it changes, and none is lost."""

from datetime import UTC, datetime, time
from email import message_from_bytes
from smtplib import SMTPRecipientsRefused

import pytest
from django.core import mail
from django.core.mail.backends.base import BaseEmailBackend
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.utils import timezone, translation

from ringside.core.denied import Denied, NotNow
from ringside.core.models import AuditLine
from ringside.dogs.models import Ownership
from ringside.entries.models import Entry, EntryTerms
from ringside.home.kept import kept_of
from ringside.notices import actions, views, wording
from ringside.notices.models import Notice
from ringside.notices.queries import lacking, recipients_of, standings_of, to_print
from ringside.people.actions import choose_language
from ringside.people.models import Account, Person
from ringside.shows.models import Ring
from ringside.timetable.actions import plan_times
from tests.papers import reading
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]
SITE = "https://show.example/"
NO_SERVER = "django.core.mail.backends.smtp.EmailBackend"
HERE = "django.core.mail.backends.locmem.EmailBackend"


@pytest.fixture
def at() -> SmallShow:
    """Ada shows boxer 1 in ring 1 at 09:30 and Hovawart 4 in ring 2 at 11:00; Ben boxer 2, Cleo boxer 3."""
    found = small_show()
    plan(found, found.show_class, time(9, 30))
    plan(found, found.other_class, time(11))
    return found


def plan(at: SmallShow, show_class, when: time | None) -> None:
    plan_times(who=at.accounts["secretary"], show=at.show, times={(show_class.show_breed_id, "", ""): when})


def tell(at: SmallShow, who: str = "secretary", **told) -> None:
    actions.put_in_line(who=at.accounts[who], show=at.show, **told)
    while actions.advance(who=at.accounts[who], show=at.show, site=SITE):
        pass


def states(at: SmallShow) -> dict[str, str]:
    return {one.recipient.name: one.state for one in standings_of(at.show)[0]}


def letter_to(name: str) -> mail.EmailMessage:
    [found] = [letter for letter in mail.outbox if letter.to == [f"{name}@small.example"]]
    return found


def lose_address(at: SmallShow, name: str) -> None:
    Person.objects.filter(name=name).update(account=None, email="")


def test_each_exhibitor_gets_one_letter_with_all_own_dogs(at):
    tell(at)
    assert sorted(letter.to[0] for letter in mail.outbox) == [
        "ada@small.example", "ben@small.example", "cleo@small.example",
    ]  # fmt: skip
    body = letter_to("ada").body
    first = "Dog 1, number 1\nBoxer, open class, dogs\nSaturday 13 June 2026, ring 1, planned for 09:30\nJudge: judge"
    assert first in body
    assert "Dog 4, number 4" in body
    assert "Dog 2" not in body
    assert "https://show.example/my-dogs/" in body
    assert letter_to("ada").subject == "Small Show: number, ring and time"


def test_dogs_stand_in_the_letter_in_the_order_in_which_they_are_judged(at):
    plan(at, at.other_class, time(8))
    tell(at)
    body = letter_to("ada").body
    assert body.index("Dog 4") < body.index("Dog 1")


def test_a_letter_is_in_the_language_of_the_account(at):
    choose_language(account=at.accounts["ada"], language="de")
    tell(at)
    letter = letter_to("ada")
    assert "Samstag, 13. Juni 2026" in letter.body
    assert "Offene Klasse" in letter.body
    assert letter.subject != "Small Show: number, ring and time"
    assert "Saturday 13 June 2026" in letter_to("ben").body


def test_what_the_show_asks_of_vaccination_is_in_the_letter(at):
    EntryTerms.objects.create(show=at.show, vaccination="rabies, three weeks old at least")
    tell(at)
    assert "rabies, three weeks old at least. Bring the papers." in letter_to("ben").body


def test_the_attached_calendar_says_when_each_dog_begins(at):
    plan(at, at.other_class, None)
    tell(at, even_incomplete=True)
    parts = message_from_bytes(letter_to("ada").message().as_bytes()).walk()
    [attached] = [part for part in parts if part.get_content_type() == "text/calendar"]
    first, second = events_in(attached.get_payload(decode=True).decode())
    assert (first["SUMMARY"], first["DTSTART"]) == ("Small Show: Dog 1", "20260613T093000")
    assert (second["SUMMARY"], second["DTSTART;VALUE=DATE"]) == ("Small Show: Dog 4", "20260613")
    assert second["DTEND;VALUE=DATE"] == "20260614"
    assert "ring 1\\, planned for 09:30" in first["DESCRIPTION"]


def events_in(text: str) -> list[dict[str, str]]:
    """RFC 5545, 3.1: lines of at most 75 octets that end with CRLF; one that begins with a blank goes on the last."""
    assert all(len(line.encode()) <= 75 for line in text.split("\r\n"))
    unfolded = text.replace("\r\n ", "").split("\r\n")
    assert (unfolded[0], unfolded[-2:]) == ("BEGIN:VCALENDAR", ["END:VCALENDAR", ""])
    parts = "\n".join(unfolded).split("BEGIN:VEVENT\n")[1:]
    return [dict(line.split(":", 1) for line in part.partition("END:VEVENT")[0].splitlines()) for part in parts]


def test_a_changed_time_comes_under_the_same_event_so_that_no_calendar_has_both(at):
    """RFC 5545, 3.8.4.7: the UID tells that it is the same event."""

    def uids() -> list[str]:
        [ada] = [one for one in recipients_of(at.show)[0] if one.name == "ada"]
        text = wording.calendar(at.show, ada, datetime(2026, 6, 1, tzinfo=UTC))
        return [one["UID"] for one in events_in(text)]

    before = uids()
    plan(at, at.show_class, time(15))
    assert sorted(uids()) == sorted(before)


def test_sent_again_it_goes_to_nobody_who_was_told_already(at):
    tell(at)
    mail.outbox.clear()
    with pytest.raises(NotNow, match="nothing has changed since"):
        tell(at)
    assert mail.outbox == []


def test_sent_again_it_goes_to_those_whose_time_changed(at):
    tell(at)
    mail.outbox.clear()
    plan(at, at.other_class, time(13))
    assert states(at) == {"ada": "changed", "ben": "told", "cleo": "told"}
    tell(at)
    assert "planned for 13:00" in letter_to("ada").body
    assert len(mail.outbox) == 1


@pytest.mark.parametrize("change", ["number", "ring", "day", "withdrawn"])
def test_a_changed_number_ring_day_or_a_withdrawn_dog_is_told_again(at, change):
    tell(at)
    mail.outbox.clear()
    breed = at.other_class.show_breed
    if change == "number":
        Entry.objects.filter(pk=at.other_entry.pk).update(number=44)
    elif change == "withdrawn":
        Entry.objects.filter(pk=at.other_entry.pk).update(state="withdrawn")
    elif change == "ring":
        breed.ring = Ring.objects.create(show=at.show, name="7")
    else:
        breed.day = datetime(2026, 6, 14, tzinfo=UTC).date()
    breed.save()
    tell(at)
    assert [letter.to for letter in mail.outbox] == [["ada@small.example"]]


def test_a_late_exhibitor_is_told_alone(at):
    entry = at.entries[2]
    Entry.objects.filter(pk=entry.pk).update(state="withdrawn")
    tell(at)
    mail.outbox.clear()
    Entry.objects.filter(pk=entry.pk).update(state="entered")
    tell(at)
    assert [letter.to for letter in mail.outbox] == [["cleo@small.example"]]


def test_no_letter_goes_out_before_every_dog_has_its_number(at):
    Entry.objects.filter(pk=at.entries[0].pk).update(number=None)
    with pytest.raises(NotNow, match="catalogue number first"):
        tell(at, even_incomplete=True)
    assert not Notice.objects.exists()


def test_letters_without_a_time_go_out_only_where_that_is_said(at):
    plan(at, at.show_class, None)
    assert dict(lacking(at.show)) == {"time": 3}
    with pytest.raises(NotNow, match="no day, ring or time yet"):
        tell(at)
    tell(at, even_incomplete=True)
    assert "ring 1, no time yet" in letter_to("ben").body


def test_a_server_that_is_away_loses_nothing_and_shows_who_was_not_reached(at, settings):
    settings.EMAIL_BACKEND, settings.EMAIL_HOST, settings.EMAIL_PORT = NO_SERVER, "127.0.0.1", 1
    tell(at)
    assert states(at) == {"ada": "failed", "ben": "failed", "cleo": "failed"}
    assert {one.problem for one in Notice.objects.all()} == {"server"}
    assert len(AuditLine.objects.get(doing="notices-sent").detail["failed"]) == 3
    page = office(at).get("/office/small/letters/").content.decode()
    assert "not reached: the mail server did not answer" in page
    settings.EMAIL_BACKEND = HERE
    tell(at)
    assert len(mail.outbox) == 3
    assert set(states(at).values()) == {"told"}


class Picky(BaseEmailBackend):
    """A server that knows no ben, and goes away after the second letter where `falls` says so."""

    falls = False

    def open(self) -> bool:
        self.count = 0
        return True

    def send_messages(self, letters) -> int:
        [letter] = letters
        if "ben@small.example" in letter.to:
            raise SMTPRecipientsRefused({"ben@small.example": (550, b"unknown")})
        self.count += 1
        if Picky.falls and self.count > 1:
            raise ConnectionResetError
        mail.outbox.append(letter)
        return 1


def test_an_address_that_is_refused_keeps_no_other_letter_back(at, settings):
    settings.EMAIL_BACKEND = f"{__name__}.Picky"
    tell(at)
    assert states(at) == {"ada": "told", "ben": "failed", "cleo": "told"}
    assert Notice.objects.get(account=at.accounts["ben"]).problem == "address"
    assert [one.name for one in to_print(at.show)] == ["ben"]


def test_a_server_that_hangs_up_in_the_middle_leaves_the_rest_to_be_sent_again(at, settings, monkeypatch):
    settings.EMAIL_BACKEND = f"{__name__}.Picky"
    monkeypatch.setattr(Picky, "falls", True)
    tell(at)
    assert states(at) == {"ada": "told", "ben": "failed", "cleo": "failed"}
    monkeypatch.setattr(Picky, "falls", False)
    mail.outbox.clear()
    tell(at)
    assert [letter.to for letter in mail.outbox] == [["cleo@small.example"]]


def test_letters_in_line_wait_until_somebody_looks_on(at, monkeypatch):
    monkeypatch.setattr(actions, "AT_ONCE", 2)
    actions.put_in_line(who=at.accounts["secretary"], show=at.show)
    assert set(states(at).values()) == {"waiting"}
    assert mail.outbox == []
    assert actions.advance(who=at.accounts["secretary"], show=at.show, site=SITE) == 1
    assert len(mail.outbox) == 2
    assert not AuditLine.objects.filter(doing="notices-sent").exists()
    assert actions.advance(who=at.accounts["secretary"], show=at.show, site=SITE) == 0
    assert len(mail.outbox) == 3
    assert AuditLine.objects.get(doing="notices-sent").detail == {"sent": 3, "failed": []}


def test_two_windows_do_not_send_the_same_letter(at):
    actions.put_in_line(who=at.accounts["secretary"], show=at.show)
    Notice.objects.update(busy_until=timezone.now() + actions.BUSY)
    assert actions.advance(who=at.accounts["secretary"], show=at.show, site=SITE) == 3
    assert mail.outbox == []
    # The other window was closed in the middle: what it held is taken up.
    Notice.objects.update(busy_until=timezone.now() - actions.BUSY)
    assert actions.advance(who=at.accounts["secretary"], show=at.show, site=SITE) == 0
    assert len(mail.outbox) == 3


def test_a_letter_says_what_holds_when_it_goes_out(at):
    actions.put_in_line(who=at.accounts["secretary"], show=at.show)
    plan(at, at.show_class, time(16))
    Entry.objects.filter(pk=at.entries[2].pk).update(state="withdrawn")
    actions.advance(who=at.accounts["secretary"], show=at.show, site=SITE)
    assert "planned for 16:00" in letter_to("ben").body
    assert [letter for letter in mail.outbox if letter.to == ["cleo@small.example"]] == []
    assert states(at) == {"ada": "told", "ben": "told"}


def test_the_audit_says_who_sent_how_many_and_holds_no_address(at):
    tell(at)
    line = AuditLine.objects.get(doing="send-notices")
    assert (line.who, line.detail) == (at.accounts["secretary"], {"count": 3})
    assert "@" not in str([one.detail for one in AuditLine.objects.all()])


def test_who_may_not_write_to_the_exhibitors_sends_nothing(at):
    with pytest.raises(Denied):
        tell(at, who="assistant")
    assert not Notice.objects.exists()


def test_who_has_no_address_is_listed_and_gets_a_letter_on_paper(at):
    lose_address(at, "ada")
    tell(at)
    assert len(mail.outbox) == 2
    page = office(at).get("/office/small/letters/").content.decode()
    assert "Print 1 letter, for whoever has no address" in page
    answer = office(at).get("/papers/show/small/letters.pdf")
    text = reading.text(answer.content)
    reading.check(answer.content)
    assert "ada Small Show: number, ring and time These dogs are entered for you in Small Show:" in text
    assert "Dog 1, number 1 Boxer, open class, dogs Saturday 13 June 2026, ring 1, planned for 09:30" in text
    assert "Dog 4, number 4" in text
    assert "Dog 2" not in text


def test_a_letter_on_paper_is_in_the_language_of_whoever_prints_it(at):
    lose_address(at, "ada")
    text = reading.text(office(at, "fr").get("/papers/show/small/letters.pdf?size=letter").content)
    assert "samedi 13 juin 2026" in text


def test_where_everybody_is_reached_there_is_no_letter_to_print(at):
    answer = office(at).get("/papers/show/small/letters.pdf")
    assert answer.status_code == 409
    assert "there is none to print" in answer.content.decode()


def test_a_dog_with_one_owner_who_can_be_reached_needs_no_paper(at):
    Ownership.objects.create(dog=at.entries[0].dog, person=Person.objects.create(name="Without address"))
    assert to_print(at.show) == []


def office(at: SmallShow, language: str = "en") -> Client:
    client = Client(headers={"accept-language": language})
    client.force_login(at.accounts["secretary"])
    return client


def test_the_secretary_sees_who_gets_what_and_sends_from_the_page(at):
    client = office(at)
    page = client.get("/office/small/letters/").content.decode()
    assert "ada@small.example" in page
    assert "Send 3 letters" in page
    assert "planned for 09:30" in page
    client.post("/office/small/letters/send/")
    page = client.get("/office/small/letters/").content.decode()
    assert "3 letters wait to be sent" in page
    part = client.post("/office/small/letters/advance/", headers={"HX-Request": "true"}).content.decode()
    assert "Sent: 3." in part
    assert "<html" not in part
    assert len(mail.outbox) == 3
    assert "https://testserver" in mail.outbox[0].body or "http://testserver" in mail.outbox[0].body
    page = client.get("/office/small/letters/?state=told").content.decode()
    assert "ada@small.example" in page
    assert "Send 3 letters" not in page
    assert "ada@small.example" not in client.get("/office/small/letters/?state=failed").content.decode()


def test_the_next_page_of_a_state_stays_with_that_state(at, monkeypatch):
    monkeypatch.setattr(views, "PER_PAGE", 1)
    page = office(at).get("/office/small/letters/", {"state": "to tell", "page": "2"}).content.decode()
    assert "?state=to+tell&amp;page=1" in page
    assert "?state=to+tell&amp;page=3" in page


def test_the_page_says_what_is_missing_and_asks_to_be_sure(at):
    plan(at, at.show_class, None)
    client = office(at)
    page = client.get("/office/small/letters/").content.decode()
    assert "3 dogs have no planned time." in page
    assert "although something in them is not known yet" in page
    assert client.post("/office/small/letters/send/").status_code == 409
    client.post("/office/small/letters/send/", {"even_incomplete": "on"})
    assert Notice.objects.count() == 3


def test_an_assistant_sees_the_letters_and_cannot_send_them(at):
    client = Client()
    client.force_login(at.accounts["assistant"])
    assert "Send 3 letters" not in client.get("/office/small/letters/").content.decode()


def test_the_page_asks_the_database_the_same_however_many_exhibitors(at):
    def queries() -> int:
        with CaptureQueriesContext(connection) as seen:
            standings_of(at.show)
        return len(seen)

    few = queries()
    for entry in at.entries:
        Ownership.objects.create(
            dog=entry.dog,
            person=Person.objects.create(
                name=f"More {entry.pk}", account=Account.objects.create_user(f"more{entry.pk}@small.example")
            ),
        )
    assert queries() == few


def test_what_an_exhibitor_was_told_is_in_the_persons_file_and_goes_with_the_account(at):
    tell(at)
    ada = at.accounts["ada"]
    [letter] = kept_of(ada)["letters"]
    assert letter["told"] == [["1", "2026-06-13", "1", "09:30"], ["4", "2026-06-13", "2", "11:00"]]
    ada.delete()
    assert Notice.objects.count() == 2


@pytest.fixture(autouse=True)
def english_again():
    yield
    translation.activate("en")
