"""A breed's awards decided on paper: typed from the judge's page, checked as at the ring, never signed without it."""

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client

from ringside.core.denied import Denied, NotNow
from ringside.core.models import AuditLine
from ringside.home.kept import kept_of
from ringside.results import paper_awards
from ringside.results.actions import publish_class
from ringside.results.award_actions import publish_awards
from ringside.results.awards import awards_of
from ringside.results.models import AwardGiven, PaperAwards
from ringside.ring.models import Edit, Sheet
from ringside.ring.queries import edits_since
from tests.photos.pictures import picture
from tests.results.writing import Pen, judge_and_sign
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]
PHOTO = picture(size=(900, 700))
# Number 1 is excellent and first of the only class.
GIVEN: dict[str, int | bool | None] = {
    "cacib-dog": 1, "reserve-cacib-dog": False, "best-of-sex-dog": 1, "best-of-breed": 1,
}  # fmt: skip


@pytest.fixture
def at() -> SmallShow:
    found = small_show()
    judge_and_sign(found)
    return found


def breed_of(at: SmallShow):
    return at.show_class.show_breed


def type_in(at: SmallShow, decided=None, who: str = "assistant", **more) -> PaperAwards:
    return paper_awards.type_awards(who=at.accounts[who], show_breed=breed_of(at), decided=decided or GIVEN, **more)


def told(at: SmallShow) -> dict[str, tuple[str, int | None]]:
    [found] = awards_of([breed_of(at)])
    return {line.offered.code: (line.state, line.entry.number if line.entry else None) for line in found.lines}


def test_awards_typed_with_the_judges_page_are_signed_and_can_be_published(at):
    type_in(at, page=PHOTO)
    [found] = awards_of([breed_of(at)])
    assert found.state == "signed"
    publish_class(by=at.accounts["secretary"], show_class=at.show_class)
    publish_awards(by=at.accounts["secretary"], show_breed=breed_of(at))
    assert told(at)["best-of-breed"] == ("given", 1)
    assert AwardGiven.objects.get(award="best-of-breed").entry == at.entries[0]
    assert AuditLine.objects.get(doing="type-awards").detail == {"signed": True, "page": True}


def test_without_the_page_or_a_reason_they_count_as_not_signed(at):
    type_in(at)
    [found] = awards_of([breed_of(at)])
    assert found.state == "being judged"
    with pytest.raises(NotNow, match="a photo of the page that the judge signed"):
        publish_awards(by=at.accounts["secretary"], show_breed=breed_of(at))
    type_in(at, why="The judge has left with the book.")
    assert awards_of([breed_of(at)])[0].state == "signed"


def test_a_certificate_for_a_dog_that_may_not_have_it_is_never_taken_in_silence(at):
    wrong = {"cacib-dog": 3}
    with pytest.raises(paper_awards.AgainstTheRules) as refused:
        type_in(at, wrong, page=PHOTO)
    assert any("3" in words for words in refused.value.said)
    assert not Edit.objects.filter(sheet=f"breed:{breed_of(at).pk}").exists()
    assert not PaperAwards.objects.exists()
    type_in(at, wrong, page=PHOTO, as_written=True)
    [found] = awards_of([breed_of(at)])
    assert (found.state, told(at)["cacib-dog"]) == ("signed", ("given", 3))
    assert found.card.findings == refused.value.said


def test_while_a_class_is_not_signed_its_dogs_are_named_with_the_class(at):
    Sheet.objects.filter(show_class=at.show_class).update(signed=None)
    with pytest.raises(paper_awards.AgainstTheRules, match="Not signed yet: Open class, dogs"):
        type_in(at, {"cacib-dog": 1}, page=PHOTO)


@pytest.mark.parametrize(("number", "words"), [(4, "No dog of this breed has the number 4"), (999, "the number 999")])
def test_a_number_that_is_none_of_the_breed_is_refused(at, number, words):
    with pytest.raises(NotNow, match=words):
        type_in(at, {"cacib-dog": number}, page=PHOTO)


def test_typed_again_before_publishing_it_replaces_what_was_typed(at):
    type_in(at, page=PHOTO)
    type_in(at, {"cacib-dog": False}, who="secretary")
    assert (told(at)["cacib-dog"], told(at)["best-of-breed"][0]) == (("withheld", None), "undecided")
    card = Sheet.objects.get(show_breed=breed_of(at))
    assert (card.held, card.disputed, card.signed is not None) == ([], [], True)
    assert {edit.role for edit in Edit.objects.filter(sheet=card.key)} == {"paper"}


def test_every_tablet_of_the_ring_hears_of_it(at):
    type_in(at, page=PHOTO)
    heard = {
        one["field"]: one["value"] for one in edits_since(at.ring, 0) if one["sheet"] == f"breed:{breed_of(at).pk}"
    }
    first = str(at.entries[0].pk)
    assert (heard["award.cacib-dog"], heard["award.reserve-cacib-dog"]) == (first, False)
    assert "signature" in heard


def test_awards_that_the_judge_signed_on_a_tablet_are_not_typed_over(at):
    pen, card = Pen(at), f"breed:{breed_of(at).pk}"
    pen.write(card, {"award.cacib-dog": str(at.entries[0].pk)})
    pen.sign(card)
    with pytest.raises(NotNow, match="signed these awards on a tablet"):
        type_in(at, page=PHOTO)


def test_awards_without_a_judge_or_a_ring_are_not_typed_in(at):
    breed = breed_of(at)
    breed.judge = None
    breed.save()
    with pytest.raises(NotNow, match="no judge or no ring"):
        type_in(at, page=PHOTO)


@pytest.mark.parametrize("who", ["steward", "writer", "judge"])
def test_who_does_not_work_in_the_office_types_no_awards_in(at, who):
    with pytest.raises(Denied):
        type_in(at, who=who, page=PHOTO)


def office(at: SmallShow) -> Client:
    client = Client()
    client.force_login(at.accounts["secretary"])
    return client


def address(at: SmallShow) -> str:
    return f"/office/small/results/awards/{breed_of(at).pk}/paper/"


def typed(at: SmallShow, numbers: dict[str, int], **more) -> dict[str, object]:
    return {"why_no_page": "", **{f"number_{code}": number for code, number in numbers.items()}, **more}


def test_the_office_types_awards_in_and_hands_the_page_out(at):
    client = office(at)
    at_first = client.get(f"/office/small/results/awards/{breed_of(at).pk}/").content.decode()
    assert "Decided on paper: type the awards in" in at_first
    answer = client.post(address(at), typed(at, {"cacib-dog": 1}, page=SimpleUploadedFile("a.jpg", PHOTO)))
    assert answer.status_code == 302
    assert "Judged on paper by judge" in client.get(answer["Location"]).content.decode()
    assert client.get(f"{address(at)}page/")["Content-Type"] == "image/jpeg"


def test_what_does_not_go_with_the_rules_is_said_and_asked_and_stays_typed(at):
    client = office(at)
    assert "says so all the same" not in client.get(address(at)).content.decode()
    answer = client.post(address(at), typed(at, {"cacib-dog": 3}, why_no_page="Lost"))
    page = answer.content.decode()
    assert answer.status_code == 400
    assert "says so all the same" in page
    assert 'value="3"' in page
    assert client.post(address(at), typed(at, {"cacib-dog": 3}, why_no_page="Lost", as_written="on")).status_code == 302
    assert told(at)["cacib-dog"] == ("given", 3)


def test_a_dog_and_withheld_at_once_is_refused_beside_the_award(at):
    answer = office(at).post(address(at), typed(at, {"cacib-dog": 1}, **{"withheld_cacib-dog": "on"}))
    assert "Either a dog has it or it is withheld" in answer.content.decode()
    assert not PaperAwards.objects.exists()


def test_after_publishing_the_page_takes_a_missing_photo_and_nothing_else(at):
    type_in(at, why="Lost")
    publish_class(by=at.accounts["secretary"], show_class=at.show_class)
    publish_awards(by=at.accounts["secretary"], show_breed=breed_of(at))
    with pytest.raises(NotNow, match="published already"):
        type_in(at, page=PHOTO)
    client = office(at)
    assert "number_cacib-dog" not in client.get(address(at)).content.decode()
    client.post(address(at), {"why_no_page": "", "page": SimpleUploadedFile("page.jpg", PHOTO)})
    assert PaperAwards.objects.get().page
    with pytest.raises(NotNow, match="here already"):
        paper_awards.attach_awards_page(who=at.accounts["secretary"], show_breed=breed_of(at), page=PHOTO)


def test_a_judge_is_told_that_the_signed_awards_are_kept(at):
    type_in(at, page=PHOTO)
    [kept] = kept_of(at.accounts["judge"])["signed_pages"]
    assert (kept["class"], kept["is_kept"]) == ("Boxer: awards", True)
