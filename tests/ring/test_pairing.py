"""Tablets without a password: codes used once, short-lived, limited in tries; what is held is never lost."""

import json
from datetime import datetime, timedelta

import pytest
from django.db import connection
from django.test import Client
from django.utils import timezone

from ringside.core.denied import Denied, NotNow
from ringside.results import actions as results
from ringside.ring import held, pairing, tablets
from ringside.ring.access import Worker
from ringside.ring.actions import take_edits
from ringside.ring.models import Edit, Mark, Pairing, Tablet
from tests.ring.test_taking_edits import edit, sheet_of, take
from tests.shows_for_tests import FIRST_DAY, SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def at() -> SmallShow:
    return small_show()


def code_for(at: SmallShow, kind: str = "judge") -> str:
    return pairing.make_code(who=at.accounts["secretary"], ring=at.ring, kind=kind, day=FIRST_DAY)


def paired(at: SmallShow, kind: str = "judge") -> Client:
    tablet = Client()
    answer = tablet.post("/ring/pair/", {"code": code_for(at, kind).lower()})
    assert answer.url == f"/ring/{at.ring.pk}/"
    return tablet


def office_of(at: SmallShow) -> Worker:
    return Worker(at.ring, frozenset({"secretary"}), at.accounts["secretary"])


def send(tablet: Client, at: SmallShow, *edits, **more):
    body = json.dumps({"edits": edits, "since": 0, **more})
    headers = {"accept": "application/json"}
    return tablet.post(f"/ring/{at.ring.pk}/edits/", body, content_type="application/json", headers=headers)


def test_a_paired_tablet_works_in_its_ring_without_a_password(at):
    tablet = paired(at)
    assert tablet.get(f"/ring/{at.ring.pk}/").status_code == 200
    assert tablet.get(f"/ring/{at.ring.pk}/day/").json()["roles"] == ["judge"]
    assert send(tablet, at, edit(sheet_of(at), "mark.croup", 1)).json()["answers"][0]["state"] == "applied"
    assert Edit.objects.get().pairing == Pairing.objects.get()


def test_a_code_pairs_one_tablet_only(at):
    code = code_for(at)
    assert Client().post("/ring/pair/", {"code": code}).status_code == 302
    answer = Client().post("/ring/pair/", {"code": code})
    assert answer.status_code == 403
    assert "used already" in answer.content.decode()


def test_looking_at_the_link_does_not_use_the_code_up(at):
    code = pairing.plain(code_for(at))
    for _ in range(3):
        assert Client().get(f"/ring/pair/{code}/").status_code == 200
    assert Client().post("/ring/pair/", {"code": code}).status_code == 302


def test_a_code_older_than_fifteen_minutes_is_refused(at):
    code = code_for(at)
    made = Pairing.objects.get().made_at
    Pairing.objects.update(made_at=made - timedelta(minutes=16))
    assert Client().post("/ring/pair/", {"code": code}).status_code == 403


def test_after_twenty_wrong_codes_even_a_right_one_waits(at):
    for n in range(pairing.MOST_WRONG_FROM_ADDRESS):
        Client().post("/ring/pair/", {"code": f"WRONG{n:03}"})
    answer = Client().post("/ring/pair/", {"code": code_for(at)})
    assert answer.status_code == 429
    assert "quarter of an hour" in answer.content.decode()


def test_the_code_itself_is_not_kept(at):
    code = pairing.plain(code_for(at))
    assert code not in str(Pairing.objects.values().get())


@pytest.mark.parametrize(
    ("kind", "mark", "presence", "signature"),
    [("judge", "applied", "applied", "applied"), ("writer", "applied", "applied", "refused"),
     ("steward", "refused", "applied", "refused")],
)  # fmt: skip
def test_a_paired_tablet_writes_what_its_role_may(at, kind, mark, presence, signature):
    answers = send(
        paired(at, kind), at, edit(sheet_of(at), "mark.croup", 1, number=1),
        edit(f"class:{at.show_class.pk}", f"presence.{at.entries[0].pk}", "absent", number=2),
        edit(sheet_of(at), "signature", {"covers": ["e1"]}, number=3),
    ).json()["answers"]  # fmt: skip
    assert [answer["state"] for answer in answers] == [mark, presence, signature]


def test_a_paired_tablet_reaches_no_other_ring_and_no_office(at):
    tablet = paired(at)
    assert tablet.get(f"/ring/{at.other_ring.pk}/").status_code == 302
    assert tablet.get("/office/small/").status_code == 302
    assert tablet.get("/my-dogs/").status_code == 302


def test_an_ended_pairing_is_asked_to_pair_again_and_keeps_its_words(at):
    tablet = paired(at)
    pairing.end(who=at.accounts["secretary"], pairing=Pairing.objects.get())
    answer = send(tablet, at, edit(sheet_of(at), "mark.croup", 1))
    assert answer.status_code == 401
    assert "everything written on it is kept" in answer.json()["error"]


def test_an_ended_tablet_that_opens_the_page_is_led_to_pair_again(at):
    tablet = paired(at)
    Pairing.objects.update(ends_at=Pairing.objects.get().used_at)
    answer = tablet.get(f"/ring/{at.ring.pk}/", follow=True)
    assert answer.redirect_chain[-1][0] == "/ring/pair/"
    assert "pairing has ended" in answer.content.decode()


def test_wrong_codes_count_for_the_whole_quarter_of_an_hour(at):
    for _ in range(2):
        Client().post("/ring/pair/", {"code": "WRONG111"})
    with connection.cursor() as cursor:
        cursor.execute("select min(expires) from django_cache where cache_key like '%pairing-wrong%'")
        expires = cursor.fetchone()[0]
    expires = datetime.fromisoformat(expires) if isinstance(expires, str) else expires
    assert expires.replace(tzinfo=None) - timezone.now().replace(tzinfo=None) > timedelta(minutes=14)


def test_a_pairing_ends_with_its_day(at):
    tablet = paired(at)
    Pairing.objects.update(ends_at=Pairing.objects.get().used_at)
    assert send(tablet, at).status_code == 401


@pytest.mark.parametrize("role", ["assistant", "judge", "steward"])
def test_only_the_secretary_makes_codes(at, role):
    with pytest.raises(Denied):
        pairing.make_code(who=at.accounts[role], ring=at.ring, kind="judge", day=FIRST_DAY)


def test_a_class_is_not_published_while_a_tablet_holds_edits_of_its_ring(at):
    send(paired(at), at, edit(sheet_of(at), "mark.croup", 1), device="tablet-1", unsent=4)
    card = f"class:{at.show_class.pk}"
    grades = [edit(card, f"grade.{e.pk}", "good", number=50 + n) for n, e in enumerate(at.entries)]
    take(at, *grades, edit(card, "signature", {"covers": [g["id"] for g in grades]}, number=60))
    with pytest.raises(NotNow, match="still holds 4 edits"):
        results.publish_class(by=at.accounts["secretary"], show_class=at.show_class)
    tablets.declare_lost(who=at.accounts["secretary"], tablet=Tablet.objects.get(), reason="Fell into the pond.")
    results.publish_class(by=at.accounts["secretary"], show_class=at.show_class)


def test_what_came_in_as_a_file_no_longer_keeps_the_class_back(at):
    first, second, third = (edit(sheet_of(at), f"mark.{point}", 1, number=n) for n, point in enumerate(
        ("croup", "topline", "stop"), 1))  # fmt: skip
    send(paired(at), at, first, device="tablet-1", unsent=2)
    content = json.dumps({"edits": [first, second, third]}).encode()
    for _ in range(2):
        held.take_file(who=at.accounts["secretary"], ring=at.ring, content=content)
    assert Tablet.objects.get().unsent == 0
    assert tablets.holding_unsent(at.ring.pk) == []


def test_a_tablet_that_only_listens_is_seen_too(at):
    tablet = paired(at, "steward")
    tablet.get(f"/ring/{at.ring.pk}/edits/?since=0&device=tablet-9")
    assert (Tablet.objects.get().device, Tablet.objects.get().role) == ("tablet-9", "steward")


def test_a_tablet_is_not_lost_without_a_reason(at):
    send(paired(at), at, device="tablet-1", unsent=4)
    with pytest.raises(NotNow):
        tablets.declare_lost(who=at.accounts["secretary"], tablet=Tablet.objects.get(), reason=" ")


def test_what_a_lost_tablet_sends_later_is_held_and_can_be_taken_in(at):
    send(paired(at), at, device="tablet-1", unsent=1)
    tablets.declare_lost(who=at.accounts["secretary"], tablet=Tablet.objects.get(), reason="Fell into the pond.")
    assert [a.state for a in take(at, edit(sheet_of(at), "mark.croup", 2))] == ["held"]
    assert Mark.objects.count() == 0
    waiting = held.held_in(at.show)
    held.take_in(worker=office_of(at), edit=waiting[0])
    assert Mark.objects.get().mark == 2
    assert held.held_in(at.show) == []


def test_a_held_edit_that_makes_no_sense_stays_on_record(at):
    take(at, edit(f"entry:{at.other_entry.pk}", "mark.nonsense", 2))
    [waiting] = held.held_in(at.show)
    with pytest.raises(NotNow, match="stays on record"):
        held.take_in(worker=office_of(at), edit=waiting)
    assert Edit.objects.get().state == "held"


def test_a_held_edit_taken_in_goes_to_the_ring_where_its_dog_is_judged(at):
    take(at, edit(f"entry:{at.other_entry.pk}", "mark.croup", 2))
    held.take_in(worker=office_of(at), edit=held.held_in(at.show)[0])
    worker = Worker(at.other_ring, frozenset({"judge"}), at.accounts["other-judge"])
    assert take_edits(worker=worker, raw_edits=[]) == []
    assert Edit.objects.get().ring == at.other_ring
    assert Mark.objects.get().mark == 2


def test_a_file_handed_over_is_taken_in_once_and_its_signatures_wait_for_the_judge(at):
    kept = {
        "edits": [edit(sheet_of(at), "mark.croup", 2), edit(sheet_of(at), "signature", {"covers": ["e1"]}, number=2)],
        "refused": [{"id": "e3", "reason": "x", "edit": edit(sheet_of(at), "mark.topline", 1, number=3)}],
    }
    content = json.dumps(kept).encode()
    for _ in range(2):
        answers = held.take_file(who=at.accounts["secretary"], ring=at.ring, content=content)
        assert [answer.state for _, answer in answers] == ["applied", "refused", "applied"]
    assert Edit.objects.filter(state="taken").count() == 2
    take(at, kept["edits"][1])
    assert Edit.objects.get(pk="e2").state == "taken"


@pytest.mark.parametrize("content", [b"", b"{", b"[]", b'{"edits": 3}', b'{"edits": [], "refused": [1]}', b"\xff\xfe"])
def test_a_file_that_no_ring_page_saved_is_refused_in_words(at, content):
    with pytest.raises(Denied, match="No ring page saved this file"):
        held.take_file(who=at.accounts["secretary"], ring=at.ring, content=content)


def test_the_office_page_shows_code_tablets_and_what_is_held(at):
    office = Client()
    office.force_login(at.accounts["secretary"])
    send(paired(at), at, device="tablet-1", unsent=3)
    take(at, edit(f"entry:{at.other_entry.pk}", "mark.croup", 2, number=9))
    page = office.post("/office/small/rings/code/", {"ring": at.ring.pk, "kind": "writer", "day": "2026-06-13"})
    text = page.content.decode()
    assert "<svg" in text
    assert "style=" not in text
    assert "This dog or class is judged in another ring." in text
    assert office.post("/office/small/rings/code/", {"ring": at.ring.pk, "kind": "owner", "day": ""}).status_code == 404
    assert office.post("/office/small/rings/code/", {"ring": "x", "kind": "judge", "day": ""}).status_code == 404
