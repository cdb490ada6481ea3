"""Who handles a dog: read from a file, typed, sent, mended, written out again and forgotten; never told to the ring."""

import csv
import io
from datetime import date, timedelta

import pytest
from django.test import Client
from django.utils import timezone

from ringside.core.denied import Denied, NotNow
from ringside.core.models import AuditLine
from ringside.entries import actions, by_hand, waiting
from ringside.entries.handlers import forget_old_handlers, name_handler
from ringside.entries.lists import Asked, written
from ringside.entries.models import Entry, EntryLine, EntryRequest
from ringside.entries.reading.words import field_of
from ringside.entries.web import actions as web
from ringside.shows.models import Show
from tests.entries.test_web import LATE, TODAY, own_dog, texts
from tests.entry_files import GOOD, HEADINGS
from tests.shows_for_tests import FIRST_DAY

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


def club_file(handler: str, heading: str = "Handler") -> bytes:
    target = io.StringIO()
    csv.writer(target, delimiter=";").writerows([(*HEADINGS, heading), (*GOOD[0], handler)])
    return target.getvalue().encode("utf-8-sig")


@pytest.mark.parametrize("heading", ["Handler", "Vorführer", "Présentateur", "Presentador", "Shown by"])
def test_a_column_of_the_club_s_file_is_read_in_four_languages(heading):
    assert field_of(heading) == "handler"


def test_a_handler_in_a_file_comes_with_the_entry_and_out_with_the_list(at):
    office = at.accounts["secretary"]
    file = actions.read_file(who=office, show=at.show, name="c.csv", content=club_file("Ida Quay"), today=TODAY)
    assert actions.take_lines(who=office, file=file, today=TODAY) == 1
    assert Entry.objects.get(dog__name="Arrow of Tansymoor").handler == "Ida Quay"
    out = list(csv.DictReader(io.StringIO(written(at.show, Asked(), "csv").decode("utf-8-sig")), delimiter=";"))
    assert [row["Handler"] for row in out if row["Name of dog"] == "Arrow of Tansymoor"] == ["Ida Quay"]


@pytest.mark.parametrize("typed", ["=1+1", "#REF!", "x" * 121])
def test_what_cannot_be_a_name_is_said_of_the_line_and_kept_as_typed(at, typed):
    office = at.accounts["secretary"]
    file = actions.read_file(who=office, show=at.show, name="c.csv", content=club_file(typed), today=TODAY)
    line = file.lines.get()
    assert line.standing == "refused"
    assert typed in line.cells
    with pytest.raises(NotNow, match=r"(?i)handler"):
        name_handler(who=office, entry=at.entries[0], handler=typed)


def test_a_dog_entered_again_by_hand_has_the_handler_named_then(at):
    office = at.accounts["secretary"]
    told = {**texts(), "born": "01.02.2022", "class": "open"}
    entry = by_hand.enter(who=office, show=at.show, texts={**told, "handler": "Ida Quay"}, today=TODAY)
    assert Entry.objects.get(pk=entry.pk).handler == "Ida Quay"
    Entry.objects.filter(pk=entry.pk).update(state="withdrawn")
    again = by_hand.enter(who=office, show=at.show, texts={**told, "handler": "Bo Reed"}, today=TODAY)
    assert again.pk == entry.pk
    assert Entry.objects.values_list("handler", "state").get(pk=entry.pk) == ("Bo Reed", "entered")


def test_the_web_form_asks_keeps_and_shows_what_was_typed(at, dora):
    dog, client, today = own_dog(at, dora), Client(), timezone.localdate()
    days = {"first_day": today + timedelta(days=60), "last_day": today + timedelta(days=60)}
    Show.objects.update(**days, entries_open=today, entries_close=today + timedelta(days=9))
    client.force_login(dora)
    at_dog = f"/enter/small/dogs/{dog.pk}/"
    wrong = client.post(at_dog, {"class": "open", "handler": "=Ida"})
    assert wrong.status_code == 400
    assert "=Ida" in wrong.content.decode()
    assert not Entry.objects.filter(dog=dog).exists()
    assert client.post(at_dog, {"class": "open", "handler": " Ida  Quay"}).status_code == 302
    assert Entry.objects.get(dog=dog).handler == "Ida Quay"
    assert 'value="Ida Quay"' in client.get(at_dog).content.decode()
    client.post(at_dog, {"class": "open", "handler": ""})
    assert Entry.objects.get(dog=dog).handler == ""


def test_a_late_entry_keeps_its_handler_until_it_is_accepted(at, dora):
    dog, office = own_dog(at, dora), at.accounts["secretary"]
    late = web.choose_classes(
        who=dora, show=at.show, dog=dog, classes=["open"], today=LATE, handler="Ida Quay"
    )  # fmt: skip
    [entry] = waiting.accept(who=office, request=late, reason="Agreed", today=LATE)
    assert Entry.objects.get(pk=entry.pk).handler == "Ida Quay"


def test_the_secretary_mends_it_on_the_entry_s_page_and_the_audit_holds_no_name(at):
    client, entry = Client(), at.entries[0]
    client.force_login(at.accounts["secretary"])
    page = f"/office/small/entries/{entry.pk}/"
    assert "Name another handler" in client.get(page).content.decode()
    wrong = client.post(f"{page}handler/", {"handler": "=Ida"})
    assert wrong.status_code == 400
    assert "=Ida" in wrong.content.decode()
    assert client.post(f"{page}handler/", {"handler": "Ida Quay"}).status_code == 302
    assert "Ida Quay" in client.get(page).content.decode()
    line = AuditLine.objects.get(doing="name-handler")
    assert "Ida" not in f"{line.about}{line.detail}"


def test_a_writer_may_not_name_a_handler(at):
    with pytest.raises(Denied):
        name_handler(who=at.accounts["writer"], entry=at.entries[0], handler="Ida Quay")


def test_the_ring_page_s_data_name_no_handler(at):
    Entry.objects.update(handler="Ida Quay")
    client = Client()
    client.force_login(at.accounts["judge"])
    answer = client.get(f"/ring/{at.ring.pk}/day/")
    assert answer.status_code == 200
    assert "Quay" not in answer.content.decode()


def test_a_stranger_s_name_goes_with_the_old_addresses_and_an_owner_s_stays(at, dora):
    office = at.accounts["secretary"]
    file = actions.read_file(who=office, show=at.show, name="c.csv", content=club_file("Ida Quay"), today=TODAY)
    line = file.lines.get()
    actions.mend_line(who=office, line=line, texts={"handler": "Bo Reed"}, today=TODAY)
    own, other = at.entries[:2]
    Entry.objects.filter(pk=own.pk).update(handler="ADA")
    Entry.objects.filter(pk=other.pk).update(handler="Ida Quay")
    EntryRequest.objects.create(show=at.show, account=dora, dog=own.dog, texts={"handler": "Ida Quay"}, classes=[])
    forget_old_handlers(FIRST_DAY)
    assert Entry.objects.get(pk=other.pk).handler == "Ida Quay"
    forget_old_handlers(date(2026, 6, 14))
    assert [Entry.objects.get(pk=one.pk).handler for one in (own, other)] == ["ADA", ""]
    assert EntryRequest.objects.get().texts == {}
    file.refresh_from_db()
    kept = EntryLine.objects.get()
    assert "Ida Quay" not in kept.cells
    assert "handler" not in kept.mended
    assert "Arrow of Tansymoor" in kept.cells
    assert bytes(file.content) == b""
