"""The show-day desk: reversible where it may be, refused in words where it may not, each change with its reason."""

from datetime import date

import pytest
from django.test import Client

from ringside.core.denied import Denied, NotNow
from ringside.core.models import AuditLine
from ringside.entries.models import Entry
from ringside.results import day_actions, queries
from ringside.results.models import DayChange, Report
from ringside.results.moves import all_reasons, reasons_for, withdrawals_for
from ringside.ring.models import Edit, Sheet
from ringside.ring.presence import mark_presence
from ringside.ring.queries import edits_since
from ringside.shows.models import Ring, Role, ShowBreed, ShowClass
from tests.results.writing import Pen, judge_and_sign
from tests.shows_for_tests import small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]
TEXTS = {
    "name": "Left Out of the Meadow", "breed": "Boxer", "sex": "dog", "born": "2022-03-03", "owner": "Dora",
    "class": "open", "class_code": "open", "email": "dora@small.example", "chip": "",
}  # fmt: skip


@pytest.fixture
def at():
    return small_show()


@pytest.fixture
def office(at) -> Client:
    client = Client()
    client.force_login(at.accounts["secretary"])
    return client


def presence_of(at, entry):
    rows = queries.compiled(at.show_class).rows
    return next(row.presence for row in rows if row.entry.pk == entry.pk)


def test_the_office_marks_a_dog_absent_and_back_and_the_tablets_hear_of_both(at):
    for word in ("absent", "present", "excused"):
        mark_presence(who=at.accounts["secretary"], entry=at.entries[0], presence=word)
        assert presence_of(at, at.entries[0]) == word
    heard = edits_since(Ring.objects.get(pk=at.ring.pk), 0)
    assert [edit["value"] for edit in heard] == ["absent", "present", "excused"]
    assert [edit["by"] for edit in heard] == ["secretary"] * 3
    assert Sheet.objects.get(pk=f"class:{at.show_class.pk}").disputed == []
    assert AuditLine.objects.filter(doing="mark-presence").count() == 3


def test_the_office_settles_what_a_steward_marked_rather_than_disputing_it(at):
    Pen(at).write(f"class:{at.show_class.pk}", {f"presence.{at.entries[0].pk}": "absent"})
    mark_presence(who=at.accounts["secretary"], entry=at.entries[0], presence="present")
    assert presence_of(at, at.entries[0]) == "present"
    assert Sheet.objects.get(pk=f"class:{at.show_class.pk}").disputed == []


def test_a_placed_dog_was_there_and_a_signed_class_is_the_judges(at):
    Pen(at).write(f"class:{at.show_class.pk}", {"places": [str(at.entries[0].pk)]})
    with pytest.raises(NotNow, match="placed this dog"):
        mark_presence(who=at.accounts["secretary"], entry=at.entries[0], presence="absent")
    judge_and_sign(at)
    with pytest.raises(NotNow, match="signed this class"):
        mark_presence(who=at.accounts["secretary"], entry=at.entries[2], presence="absent")
    assert not Edit.objects.filter(device="office").exists()


def test_a_breed_without_a_ring_has_no_presence_yet(at):
    ShowBreed.objects.update(ring=None)
    entry = Entry.objects.get(pk=at.entries[0].pk)
    with pytest.raises(NotNow, match="no ring yet"):
        mark_presence(who=at.accounts["secretary"], entry=entry, presence="absent")


def test_an_assistant_does_not_mark_presence(at):
    with pytest.raises(Denied):
        mark_presence(who=at.accounts["assistant"], entry=at.entries[0], presence="absent")


def test_the_federation_allows_a_move_for_an_organisers_error_alone(at):
    """FCI class list and commission note (trade facts, 1.1): after the catalogue is printed, only such an error."""
    assert list(reasons_for(at.show)) == ["organiser-error"]
    at.show.overlays = ["germany"]
    # VDH, Zuchtschau-Ordnung, section 17: age, sex, colour variety, coat, missing working proof, organiser's error.
    assert set(reasons_for(at.show)) == {
        "organiser-error", "age", "sex", "colour-variety", "coat", "working-proof-missing",
    }  # fmt: skip


def test_every_reason_names_its_source_and_how_it_is_known():
    reasons = [*all_reasons(), *all_reasons("withdrawal")]
    assert all(reason.source and reason.verified in ("read", "derived", "memory") for reason in reasons)


def move(at, entry, code, reason="organiser-error", who="secretary", note="The form said so."):
    target = f"{at.show_class.show_breed_id}:{code}"
    return day_actions.move_entry(who=at.accounts[who], entry=entry, target=target, reason=reason, note=note)


def test_a_moved_dog_keeps_its_sheet_and_the_reason_is_kept(at):
    entry = at.entries[0]
    Pen(at).write(f"entry:{entry.pk}", {"mark.croup": 1})
    entry.dog.born = date(2024, 8, 1)  # 22 months on the day of the show
    entry.dog.save()
    to_class = move(at, entry, "intermediate")
    assert Entry.objects.get(pk=entry.pk).show_class == to_class
    assert Sheet.objects.get(entry=entry).fields == {"mark.croup": 1}
    [change] = DayChange.objects.all()
    assert (change.kind, change.reason, change.note) == ("moved", "organiser-error", "The form said so.")
    assert (change.before, change.after) == (
        "Boxer, open class, dogs", "Boxer, intermediate class, dogs"
    )  # fmt: skip
    assert [row.entry.pk for row in queries.compiled(at.show_class).rows] == [at.entries[1].pk, at.entries[2].pk]


@pytest.mark.parametrize("reason", ["", "age", "wish"])
def test_a_move_for_any_other_reason_is_refused(at, reason):
    with pytest.raises(NotNow, match="An exhibitor's wish is none"):
        move(at, at.entries[0], "intermediate", reason)
    assert not DayChange.objects.exists()


def test_a_class_that_is_not_open_to_the_dog_says_why(at):
    with pytest.raises(NotNow, match="Too old for this class"):
        move(at, at.entries[0], "puppy")
    assert not ShowClass.objects.filter(code="puppy").exists()


def test_nothing_moves_out_of_a_signed_class_or_from_a_place(at):
    Pen(at).write(f"class:{at.show_class.pk}", {"places": [str(at.entries[0].pk)]})
    with pytest.raises(NotNow, match="placed this dog"):
        move(at, at.entries[0], "champion")
    judge_and_sign(at)
    with pytest.raises(NotNow, match="signed already"):
        move(at, at.entries[2], "veteran")


@pytest.mark.parametrize("target", ["", "x:open", "999999:open", "9:none", "1" * 30 + ":open"])
def test_a_class_that_does_not_exist_is_refused(at, target):
    with pytest.raises(NotNow, match="Choose the class"):
        day_actions.move_entry(
            who=at.accounts["secretary"], entry=at.entries[0], target=target, reason="organiser-error", note=""
        )


def withdraw(at, reason: str = "ill-or-injured", note: str = "", entry=None) -> None:
    entry = entry or at.entries[0]
    day_actions.withdraw_entry(who=at.accounts["secretary"], entry=entry, reason=reason, note=note)


def test_an_entry_is_withdrawn_with_its_reason_and_once(at):
    withdraw(at, note="Lame, seen by a vet")
    assert Entry.objects.get(pk=at.entries[0].pk).state == "withdrawn"
    assert [(one.reason, one.note) for one in DayChange.objects.all()] == [("ill-or-injured", "Lame, seen by a vet")]
    with pytest.raises(NotNow, match="withdrawn already"):
        withdraw(at)


def test_a_bitch_in_season_may_be_withdrawn_and_a_dog_is_none(at):
    # Source: ENCI special show regulation (copy): the fee of a bitch in season, proven that day.
    with pytest.raises(NotNow, match="allow no withdrawal for this reason"):
        withdraw(at, "bitch-in-season")
    assert "bitch-in-season" in withdrawals_for(at.show, "bitch")


def test_a_dog_that_was_in_the_ring_cannot_be_withdrawn_from_the_office(at):
    """Dutch judges' association, December 2016: who leaves the ring is not absent, but could not be judged."""
    Pen(at).write(f"entry:{at.entries[0].pk}", {"mark.croup": 1})
    with pytest.raises(NotNow, match="could not be judged"):
        withdraw(at)


@pytest.mark.parametrize("reason", ["", "wish", "age"])
def test_a_withdrawal_for_any_other_reason_is_refused_and_the_page_says_so(at, office, reason):
    with pytest.raises(NotNow, match="A dog that stays away is absent"):
        withdraw(at, reason)
    where = f"/office/small/results/day/entries/{at.entries[0].pk}/withdraw/"
    page = office.post(where, {f"withdraw-{at.entries[0].pk}-reason": reason}, follow=True).content.decode()
    assert "Choose one of the reasons that the rules allow" in page
    assert Entry.objects.get(pk=at.entries[0].pk).state == "entered"


def test_a_withdrawal_is_taken_back_with_its_reason_until_the_class_is_signed(at):
    who = at.accounts["secretary"]
    with pytest.raises(NotNow, match="not withdrawn"):
        day_actions.take_back_withdrawal(who=who, entry=at.entries[0], note="x")
    for entry in at.entries[:2]:
        withdraw(at, entry=entry)
    with pytest.raises(NotNow, match="Write down why"):
        day_actions.take_back_withdrawal(who=who, entry=at.entries[0], note=" ")
    day_actions.take_back_withdrawal(who=who, entry=at.entries[0], note="The wrong number")
    back = Entry.objects.get(pk=at.entries[0].pk)
    assert (back.state, back.number) == ("entered", 1)
    change = DayChange.objects.get(kind="back")
    assert (change.note, change.by) == ("The wrong number", who)
    assert AuditLine.objects.filter(doing="entry-back").count() == 1
    pen = Pen(at)
    pen.write(f"class:{at.show_class.pk}", {"places": [str(at.entries[0].pk)]})
    pen.sign(f"class:{at.show_class.pk}")
    with pytest.raises(NotNow, match="signed already"):
        day_actions.take_back_withdrawal(who=who, entry=at.entries[1], note="Too late")


def test_a_dog_the_printer_left_out_gets_the_next_number_and_the_page_says_so(at, office):
    page = office.post("/office/small/results/day/add/", {**TEXTS, "note": "Lost form", "seen": "yes"}, follow=True)
    words = page.content.decode()
    assert "has number 5, and no printed paper has it in this class" in words, words
    assert Entry.objects.get(dog__name=TEXTS["name"]).number == 5
    assert DayChange.objects.get().kind == "added"


def test_a_dog_is_added_only_with_the_story_and_after_numbers_are_given(at, office):
    page = office.post("/office/small/results/day/add/", {**TEXTS, "seen": "yes"}).content.decode()
    assert "This field is required." in page
    assert 'value="Dora"' in page
    Entry.objects.update(number=None)
    answer = office.post("/office/small/results/day/add/", {**TEXTS, "note": "Lost form", "seen": "yes"})
    assert answer.status_code == 409
    assert Entry.objects.count() == 4


def test_reports_are_read_by_owner_and_secretary_only(at, office):
    assistant = Client()
    assistant.force_login(at.accounts["assistant"])
    told = {"kind": "bite", "number": "1", "text": "Bit the steward's hand at the gate."}
    page = assistant.post("/office/small/results/day/reports/", told, follow=True).content.decode()
    assert "steward&#x27;s hand" not in page
    page = office.get("/office/small/results/day/reports/").content.decode()
    assert "steward&#x27;s hand" in page
    assert "People and dogs first." in page
    assert "local law" in page
    assert Report.objects.get().entry == at.entries[0]
    assert "hand" not in str(AuditLine.objects.get(doing="write-report").detail)


def test_a_report_about_a_number_that_is_not_there_is_refused(at, office):
    told = {"kind": "protest", "number": "77", "text": "Wrong class."}
    assert office.post("/office/small/results/day/reports/", told).status_code == 409
    assert not Report.objects.exists()


def test_the_day_desk_leads_from_a_number_to_its_class(at, office):
    answer = office.get("/office/small/results/day/?number=2")
    assert answer.url == f"/office/small/results/day/{at.show_class.pk}/#entry-{at.entries[1].pk}"
    assert "No dog of this show has the number 9" in office.get("/office/small/results/day/?number=9").content.decode()


def test_the_class_page_offers_what_the_desk_may_do(at, office):
    page = office.get(f"/office/small/results/day/{at.show_class.pk}/").content.decode()
    for words in ("absent", "Withdraw", "an error of the organiser or the printer", "Intermediate"):
        assert words in page
    office.post(f"/office/small/results/day/entries/{at.entries[0].pk}/presence/", {"presence": "absent"})
    assert presence_of(at, at.entries[0]) == "absent"
    office.post(
        f"/office/small/results/day/entries/{at.entries[1].pk}/withdraw/",
        {f"withdraw-{at.entries[1].pk}-reason": "ill-or-injured"},
    )
    assert Entry.objects.get(pk=at.entries[1].pk).state == "withdrawn"
    key = at.entries[2].pk
    told = {f"{key}-target": f"{at.show_class.show_breed_id}:champion", f"{key}-reason": "organiser-error"}
    answer = office.post(f"/office/small/results/day/entries/{key}/move/", told)
    assert answer.status_code == 409
    assert "confirmed title" in answer.content.decode()


def test_an_owner_of_the_show_may_do_the_same(at):
    Role.objects.create(show=at.show, account=at.accounts["stranger"], kind="owner")
    mark_presence(who=at.accounts["stranger"], entry=at.entries[0], presence="absent")
    assert presence_of(at, at.entries[0]) == "absent"


def test_the_audit_page_shows_the_days_changes_page_by_page(at, office):
    withdraw(at)
    for number in range(120):
        AuditLine.objects.create(scope=f"show:{at.show.pk}", doing="test-line", about=f"thing:{number}")
    AuditLine.objects.create(scope="show:999999", doing="elsewhere")
    page = office.get("/office/small/audit/").content.decode()
    assert "Page 1 of 2" in page
    assert "Test line" in page
    last = office.get("/office/small/audit/?page=2").content.decode()
    assert "Entry withdrawn" in last
    assert "secretary@small.example" in last
    assert "lsewhere" not in page + last
