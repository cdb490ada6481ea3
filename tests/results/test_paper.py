"""A class judged on paper: typed in from the judge's signed page, never published without the page or a reason."""

import io

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.db import IntegrityError, transaction
from django.test import Client

from ringside.core.denied import Denied, NotNow
from ringside.core.intake import NotTaken, take
from ringside.core.models import AuditLine
from ringside.core.sentences import SENTENCES
from ringside.home.kept import kept_of
from ringside.results import paper_actions
from ringside.results.actions import publish_class
from ringside.results.corrections import Result
from ringside.results.models import PaperClass, Placing
from ringside.results.paper_page import PAGE
from ringside.results.queries import compiled
from ringside.ring.access import Worker
from ringside.ring.actions import as_edit, edits_of, take_edits
from ringside.ring.awards import cards_of
from ringside.ring.models import Edit, Sheet
from ringside.ring.queries import edits_since
from ringside.ring.rights import PAPER
from ringside.shows.appointing import appoint_part
from ringside.shows.models import Role, ShowClass
from scoring.merging import merge, settled
from tests.photos.pictures import opened, picture
from tests.results.writing import Pen, judge_and_sign
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]
PHOTO = picture(size=(900, 700))
PDF = b"%PDF-1.4\n1 0 obj<<>>endobj\ntrailer<<>>\n%%EOF\n"
WHY = "The judge has left with the book."


@pytest.fixture
def at() -> SmallShow:
    return small_show()


def results(at: SmallShow, *graded: tuple[str, int | None]) -> dict[int, Result]:
    """One grade and place for each dog, in the order of their numbers."""
    told = graded or (("excellent", 1), ("very-good", 2), ("good", None))
    return {entry.pk: Result(grade=grade, place=place) for entry, (grade, place) in zip(at.entries, told, strict=True)}


def type_in(at: SmallShow, told=None, who: str = "assistant", **more) -> PaperClass:
    return paper_actions.type_class(
        who=at.accounts[who], show_class=at.show_class, results=told or results(at), **more
    )  # fmt: skip


def publish(at: SmallShow) -> None:
    publish_class(by=at.accounts["secretary"], show_class=at.show_class)


def card(at: SmallShow) -> Sheet:
    return Sheet.objects.get(show_class=at.show_class)


def test_a_class_typed_in_with_the_judges_page_is_signed_and_can_be_published(at):
    paper = type_in(at, page=PHOTO)
    found = compiled(at.show_class)
    assert (found.state, found.is_complete) == ("signed", True)
    assert [(row.entry.number, row.grade, row.place) for row in found.rows] == [
        (1, "excellent", 1), (2, "very-good", 2), (3, "good", None),
    ]  # fmt: skip
    assert (paper.judge.name, paper.typed_by) == ("judge", at.accounts["assistant"])
    publish(at)
    assert Placing.objects.get(entry=at.entries[1]).place == 2


def test_without_the_page_or_a_reason_it_counts_as_not_signed_and_is_not_published(at):
    type_in(at)
    found = compiled(at.show_class)
    assert found.state == "being judged"
    assert found.missing == ("a photo of the page that the judge signed, or the reason why there is none",)
    with pytest.raises(NotNow, match="a photo of the page that the judge signed"):
        publish(at)
    type_in(at, page=PDF)
    publish(at)


def test_a_stated_reason_stands_for_a_page_that_is_lost(at):
    paper = type_in(at, why=WHY)
    assert (paper.page.name, paper.why_no_page) == ("", WHY)
    publish(at)
    with pytest.raises(NotNow, match="published already"):
        type_in(at)


def test_the_edits_say_that_they_are_typed_from_paper_and_by_whom(at):
    type_in(at, page=PHOTO)
    edits = Edit.objects.filter(sheet=f"class:{at.show_class.pk}")
    assert {(edit.role, edit.by, edit.state) for edit in edits} == {("paper", at.accounts["assistant"], "taken")}
    assert {edit.role_words for edit in edits} == {"typed from the judge's page"}
    line = AuditLine.objects.get(doing="type-class")
    assert (line.who, line.about) == (at.accounts["assistant"], f"class:{at.show_class.pk}")
    assert line.detail == {"signed": True, "page": True}


def test_every_tablet_of_the_ring_hears_of_it_and_merges_it_to_the_same_class(at):
    type_in(at, page=PHOTO)
    heard = [one for one in edits_since(at.ring, 0) if one["sheet"] == f"class:{at.show_class.pk}"]
    rows = Edit.objects.filter(pk__in=[one["id"] for one in heard])
    told = settled(merge(as_edit(row) for row in rows))
    assert told["places"] == [str(at.entries[0].pk), str(at.entries[1].pk)]
    assert card(at).signed is not None


def test_awards_find_the_class_as_any_that_a_judge_signed(at):
    type_in(at, page=PHOTO)
    [found] = cards_of([at.show_class.show_breed])
    assert found.unsigned == []
    assert [one.place for one in found.card.standings] == [1, 2, None]


def test_typed_again_before_publishing_it_replaces_what_was_typed(at):
    type_in(at, page=PHOTO)
    type_in(at, results(at, ("good", None), ("excellent", 1), ("", None)), who="secretary")
    rows = {row.entry.number: (row.grade, row.place) for row in compiled(at.show_class).rows}
    assert rows == {1: ("good", None), 2: ("excellent", 1), 3: ("", None)}
    assert card(at).held == []
    assert PaperClass.objects.get().typed_by == at.accounts["secretary"]
    with pytest.raises(NotNow, match="number 3: grade"):
        publish(at)


def test_who_was_absent_or_excused_is_typed_too(at):
    told = results(at)
    told[at.entries[2].pk] = Result(presence="absent")
    type_in(at, told, page=PHOTO)
    assert compiled(at.show_class).rows[2].presence == "absent"
    told[at.entries[2].pk] = Result(grade="good")
    type_in(at, told)
    assert compiled(at.show_class).rows[2].presence == "present"


def test_what_a_broken_tablet_wrote_before_is_typed_over_and_stays_on_record(at):
    pen = Pen(at)
    pen.write(f"class:{at.show_class.pk}", {f"grade.{at.entries[0].pk}": "good", "places": [str(at.entries[2].pk)]})
    type_in(at, page=PHOTO)
    rows = {row.entry.number: (row.grade, row.place) for row in compiled(at.show_class).rows}
    assert rows[1] == ("excellent", 1)
    assert (card(at).held, card(at).disputed) == ([], [])
    assert Edit.objects.filter(device="hand").count() == 2


def test_what_a_tablet_brings_after_the_page_was_typed_waits_and_changes_nothing(at):
    type_in(at, page=PHOTO)
    [answer] = late_edit(at)
    assert answer.state == "held"
    assert compiled(at.show_class).rows[0].grade == "excellent"
    # Typed again from the page, the page's word stands, not the tablet's.
    type_in(at)
    assert compiled(at.show_class).rows[0].grade == "excellent"
    assert card(at).held == []


def late_edit(at: SmallShow):
    worker = Worker(at.ring, frozenset({"judge"}), at.accounts["judge"])
    return take_edits(worker=worker, raw_edits=[edit_of(at, f"grade.{at.entries[0].pk}", "good")])


def test_a_class_that_the_judge_signed_on_a_tablet_is_not_typed_over(at):
    judge_and_sign(at)
    with pytest.raises(NotNow, match="signed this class on a tablet"):
        type_in(at, page=PHOTO)
    assert not PaperClass.objects.exists()


def test_results_that_cannot_be_are_refused_and_nothing_is_written(at):
    for told, words in (
        (results(at, ("excellent", 1), ("good", 3), ("good", None)), "without a gap"),
        (results(at, ("no-such-grade", 1), ("good", None), ("good", None)), "no such grade"),
        (results(at, ("disqualified", None), ("good", None), ("good", None)), "needs its reason"),
    ):
        with pytest.raises(NotNow, match=words):
            type_in(at, told, page=PHOTO)
    assert not PaperClass.objects.exists()
    assert not Edit.objects.exists()


def test_a_class_without_a_judge_or_a_ring_is_not_typed_in(at):
    breed = at.show_class.show_breed
    breed.ring = None
    breed.save()
    with pytest.raises(NotNow, match="no judge or no ring"):
        type_in(at, page=PHOTO)


@pytest.mark.parametrize("who", ["steward", "writer", "judge"])
def test_who_does_not_work_in_the_office_types_nothing_in(at, who):
    with pytest.raises(Denied):
        type_in(at, who=who, page=PHOTO)


def test_the_office_cannot_write_a_class_past_the_page(at):
    """The role of an edit from paper is none that anybody has: only the action that asks for the page gives it."""
    assert PAPER not in Role.Kind.values
    worker = Worker(at.ring, frozenset({"owner", "secretary", "assistant"}), at.accounts["secretary"])
    [answer] = take_edits(worker=worker, raw_edits=[edit_of(at, f"grade.{at.entries[0].pk}", "good")])
    assert (answer.state, answer.reason) == ("refused", "Your role does not let you decide grades and places.")


def test_from_paper_no_critique_is_written(at):
    worker = Worker(at.ring, frozenset({PAPER}), at.accounts["secretary"])
    for sheet, field, value in (
        (f"entry:{at.entries[0].pk}", "mark.croup", 1), (f"entry:{at.entries[0].pk}", "signature", {"covers": []}),
        (f"breed:{at.show_class.show_breed_id}", "presence.1", "absent"),
    ):  # fmt: skip
        [answer] = take_edits(worker=worker, raw_edits=[edit_of(at, field, value, sheet)])
        assert (answer.state, answer.reason.startswith("Your role does not let you")) == ("refused", True)


def edit_of(at: SmallShow, field: str, value, sheet: str = ""):
    sheet = sheet or f"class:{at.show_class.pk}"
    return {
        "v": 1, "id": f"{sheet}-{field}".translate({58: "-", 46: "-"}), "sheet": sheet, "field": field, "value": value,
        "device": "hand",
        "replaces": [one.id for one in edits_of(sheet) if one.field == field], "made_at": "2026-06-13T09:00:00Z",
    }  # fmt: skip


def test_who_signed_the_page_stays_its_judge_when_another_takes_over(at):
    type_in(at, page=PHOTO)
    appoint_part(
        who=at.accounts["secretary"], show_breed=at.show_class.show_breed, sex="dog", code="",
        judge_name="Nia Velvetine", judge_email="", ring="", day=None,
    )  # fmt: skip
    assert ShowClass.objects.get(pk=at.show_class.pk).appointed.judge.name == "judge"
    assert PaperClass.objects.get().judge.name == "judge"


@pytest.mark.parametrize(
    ("content", "code"),
    [
        (b"", "page-unknown-kind"),
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", "page-unknown-kind"),
        (picture("GIF"), "page-unknown-kind"),
        (b"MZ\x90\x00 a program named page.jpg", "page-unknown-kind"),
        (b"%PDF-1.4 cut off", "page-damaged"),
        (PHOTO[:2000], "page-damaged"),
        (picture(size=(300, 200)), "page-too-small"),
        (PDF + bytes(PAGE.most_bytes), "page-too-many-bytes"),
    ],
    ids=range(8),
)
def test_what_is_no_page_is_refused_in_words(content, code):
    with pytest.raises(NotTaken) as refused:
        take(content, PAGE)
    assert refused.value.finding.code == code
    assert code in SENTENCES


def test_a_photo_of_the_page_is_drawn_again_without_place_or_camera(at):
    paper = type_in(at, page=picture(size=(4000, 3000), comment=b"home address") + b"<script>")
    content = paper.page.open("rb").read()
    assert opened(content).size == (2400, 1800)
    assert b"address" not in content
    assert b"script" not in content


def test_another_photo_takes_the_place_of_the_first_and_its_file_goes(at, django_capture_on_commit_callbacks):
    first = type_in(at, page=PHOTO).page.name
    with django_capture_on_commit_callbacks(execute=True):
        second = type_in(at, page=PDF).page
    assert not second.storage.exists(first)
    assert second.storage.exists(second.name)
    assert PaperClass.objects.get().media_type == "application/pdf"


def test_a_page_found_after_publishing_is_attached_once_and_stays(at):
    type_in(at, why=WHY)
    publish(at)
    attach = {"who": at.accounts["secretary"], "show_class": at.show_class, "page": PHOTO}
    assert paper_actions.attach_page(**attach).why_no_page == WHY
    assert AuditLine.objects.filter(doing="attach-page").count() == 1
    with pytest.raises(NotNow, match="here already"):
        paper_actions.attach_page(**attach)


def test_a_page_of_no_known_kind_cannot_be_kept(at):
    paper = type_in(at, page=PHOTO)
    with pytest.raises(IntegrityError), transaction.atomic():
        PaperClass.objects.filter(pk=paper.pk).update(media_type="text/html")


def office(at: SmallShow, who: str = "secretary") -> Client:
    client = Client()
    client.force_login(at.accounts[who])
    return client


def address(at: SmallShow) -> str:
    return f"/office/small/results/day/{at.show_class.pk}/paper/"


def typed(at: SmallShow, **more) -> dict[str, object]:
    told: dict[str, object] = {}
    for entry, (grade, place) in zip(
        at.entries, (("excellent", "1"), ("very-good", "2"), ("good", "")), strict=True
    ):  # fmt: skip
        told |= {f"presence_{entry.pk}": "present", f"grade_{entry.pk}": grade, f"place_{entry.pk}": place}
        told |= {f"reason_{entry.pk}": "", "why_no_page": ""}
    return {**told, **more}


def test_the_office_types_a_class_in_and_the_page_names_judge_and_typist(at):
    client = office(at, "assistant")
    assert (
        "Judged on paper: type it in" in client.get(f"/office/small/results/day/{at.show_class.pk}/").content.decode()
    )
    answer = client.post(address(at), typed(at, page=SimpleUploadedFile("x.exe", PHOTO, "text/html")))
    assert answer.status_code == 302
    page = client.get(f"/office/small/results/{at.show_class.pk}/").content.decode()
    assert "Judged on paper by judge, typed in by assistant@small.example" in page
    assert "Publish this class" in page
    kept = client.get(f"{address(at)}page/")
    assert kept["Content-Type"] == "image/jpeg"
    assert kept["Content-Disposition"].startswith("attachment")
    assert "sandbox" in kept["Content-Security-Policy"]
    assert opened(b"".join(kept.streaming_content)).format == "JPEG"


def test_a_file_that_is_no_page_is_said_and_what_was_typed_stays(at):
    answer = office(at).post(address(at), typed(at, page=SimpleUploadedFile("page.jpg", b"<html>", "image/jpeg")))
    page = answer.content.decode()
    assert answer.status_code == 400
    assert "This file is no PDF, JPEG, PNG or WebP picture" in page
    assert '<option value="very-good" selected>' in page
    assert not PaperClass.objects.exists()


def test_a_file_that_is_too_large_is_said_and_what_was_typed_stays(at):
    large = SimpleUploadedFile("page.jpg", PHOTO + bytes(PAGE.most_bytes), "image/jpeg")
    answer = office(at).post(address(at), typed(at, page=large))
    page = answer.content.decode()
    assert "This file is larger than 12 MB" in page
    assert '<option value="very-good" selected>' in page
    assert not PaperClass.objects.exists()


def test_a_class_refused_is_shown_again_as_it_was_typed(at):
    told = typed(at)
    told[f"place_{at.entries[1].pk}"] = "5"
    page = office(at).post(address(at), told).content.decode()
    assert "Places run from 1 without a gap" in page
    assert 'value="5"' in page


def test_the_page_is_the_offices_alone(at):
    type_in(at, page=PHOTO)
    publish(at)
    for who, status in (("secretary", 200), ("assistant", 200), ("steward", 403), ("judge", 403), ("ada", 404)):
        assert office(at, who).get(f"{address(at)}page/").status_code == status
    assert Client().get(f"{address(at)}page/").status_code == 302


def test_a_class_without_a_page_has_none_to_hand_out(at):
    type_in(at, why=WHY)
    assert office(at).get(f"{address(at)}page/").status_code == 404
    assert f"No page: {WHY}" in office(at).get(f"/office/small/results/{at.show_class.pk}/").content.decode()


def test_after_publishing_the_page_takes_a_missing_photo_and_nothing_else(at):
    type_in(at, why=WHY)
    publish(at)
    client = office(at)
    assert f"grade_{at.entries[0].pk}" not in client.get(address(at)).content.decode()
    empty = client.post(address(at), {"why_no_page": ""}).content.decode()
    assert "Choose a photo or scan" in empty
    client.post(address(at), {"why_no_page": "", "page": SimpleUploadedFile("page.pdf", PDF)})
    assert PaperClass.objects.get().page


def test_a_judge_is_told_which_signed_pages_are_kept_and_they_stay_without_the_account(at):
    type_in(at, page=PHOTO)
    judge = at.accounts["judge"]
    [kept] = kept_of(judge)["signed_pages"]
    assert (kept["class"], kept["is_kept"]) == ("Boxer, open class, dogs", True)
    judge.delete()
    assert PaperClass.objects.get().judge.name == "judge"
    at.accounts["assistant"].delete()
    assert PaperClass.objects.get().typed_by is None
    assert (
        "typed in by an account that is gone"
        in office(at).get(f"/office/small/results/{at.show_class.pk}/").content.decode()
    )


def test_a_wide_open_upload_needs_the_token(at):
    client = Client(enforce_csrf_checks=True)
    client.force_login(at.accounts["secretary"])
    answer = client.post(address(at), {**typed(at), "page": io.BytesIO(PHOTO)})
    assert answer.status_code == 403
    assert not PaperClass.objects.exists()
