"""A breed's awards on the results desk: what is missing is said, what is published stays, the tree fills."""

from collections.abc import Iterator

import pytest
from django.db import IntegrityError, transaction
from django.test import Client

from ringside.core.denied import Denied, NotNow
from ringside.home.queries import awards_won, entries_of
from ringside.people.models import Account
from ringside.results import actions
from ringside.results.award_actions import publish_awards
from ringside.results.award_tree import Node, trees_of
from ringside.results.awards import BreedAwards, awards_of, breeds_of
from ringside.results.corrections import Result, correct_class
from ringside.results.models import AwardGiven, AwardsPublication
from ringside.ring.models import Edit, Sheet, Tablet
from ringside.shows.models import ShowBreed, ShowClass
from tests.results.writing import Pen
from tests.ring.test_awards import another, breed_sheet, sign_class
from tests.ring.test_taking_edits import edit, take
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def at() -> SmallShow:
    return small_show()


@pytest.fixture
def judged(at) -> SmallShow:
    """Dogs 1, 2, 3 and bitches 11, 12 placed in that order with Excellent; both classes signed; no award given."""
    one = ShowClass.objects.create(show_breed=at.show_class.show_breed, sex="bitch", code="open")
    bitches = [another(one, 11), another(one, 12)]
    sign_class(at, bitches, sign_class(at, list(at.entries)))
    return at


def entry(at: SmallShow, number: int) -> str:
    return str(at.show.entries.get(number=number).pk)


def give(at: SmallShow, decisions: dict[str, int | bool], sign: bool = True) -> None:
    pen = Pen(at)
    pen.count = 1000 + AwardGiven.objects.count()
    fields = {f"award.{code}": who if who is False else entry(at, who) for code, who in decisions.items()}
    pen.write(breed_sheet(at), fields)
    if sign:
        pen.sign(breed_sheet(at))


def change_later(at: SmallShow, field: str, value: str) -> None:
    """The judge changes an award that is signed already: the change is held."""
    before = [one.pk for one in Edit.objects.filter(sheet=breed_sheet(at), field=field)]
    [answer] = take(at, edit(breed_sheet(at), field, value, number=5000, replaces=before))
    assert answer.state == "held"


def sign_again(at: SmallShow) -> None:
    pen = Pen(at)
    pen.count = 6000
    pen.sign(breed_sheet(at))


WHOLE = {
    "cacib-dog": 1, "reserve-cacib-dog": 2, "best-of-sex-dog": 1, "cacib-bitch": 11, "reserve-cacib-bitch": False,
    "best-of-sex-bitch": 11, "best-of-breed": 11, "best-opposite-sex": 1,
}  # fmt: skip


def publish_classes(at: SmallShow) -> None:
    for show_class in at.show_class.show_breed.classes.order_by("id"):
        actions.publish_class(by=at.accounts["secretary"], show_class=show_class)


def found(at: SmallShow) -> BreedAwards:
    [awards] = awards_of([at.show_class.show_breed])
    return awards


def publish(at: SmallShow, who: str = "secretary") -> AwardsPublication:
    return publish_awards(by=at.accounts[who], show_breed=at.show_class.show_breed)


def test_a_breed_is_to_come_then_judged_then_signed_then_published(at):
    states = [found(at).state]
    sign_class(at, list(at.entries))
    states.append(found(at).state)
    give(at, {"cacib-dog": 1})
    states.append(found(at).state)
    publish_classes(at)
    publish(at)
    states.append(found(at).state)
    assert states == ["to come", "being judged", "signed", "published"]


def test_what_is_missing_is_said_in_words(judged):
    give(judged, {"cacib-dog": 1}, sign=False)
    assert found(judged).missing == [
        "the judge's signature on the awards",
        "classes to be published first: Open class, dogs; Open class, bitches",
    ]
    assert found(judged).undecided[:2] == ["Reserve CACIB, dogs", "Best of sex, dogs"]
    with pytest.raises(NotNow, match="Missing: the judge's signature on the awards; classes to be published first"):
        publish(judged)


def test_a_class_that_is_not_signed_is_missing(at):
    ShowClass.objects.create(show_breed=at.show_class.show_breed, sex="bitch", code="open")
    assert "classes to be signed: Open class, dogs" in found(at).missing
    assert found(at).summary == "the judge's signature; 1 class to be signed"


def test_an_award_changed_after_the_signature_waits_for_a_new_one(judged):
    give(judged, WHOLE)
    publish_classes(judged)
    change_later(judged, "award.cacib-dog", entry(judged, 2))
    assert found(judged).missing == [
        "something was written after the signature; the judge signs again or sets it aside"
    ]


def test_published_awards_are_rows_and_undecided_ones_have_none(judged):
    give(judged, {**WHOLE, "best-opposite-sex": False})
    publish_classes(judged)
    publish(judged)
    rows = AwardGiven.objects.order_by("id").values_list("award", "sex", "entry__number", "withheld")
    assert list(rows) == [
        ("cacib", "dog", 1, False), ("reserve-cacib", "dog", 2, False), ("best-of-sex", "dog", 1, False),
        ("cacib", "bitch", 11, False), ("reserve-cacib", "bitch", None, True), ("best-of-sex", "bitch", 11, False),
        ("best-of-breed", "", 11, False), ("best-opposite-sex", "", None, True),
    ]  # fmt: skip


def test_an_award_left_undecided_is_not_given(judged):
    give(judged, {"cacib-dog": 1})
    publish_classes(judged)
    publish(judged)
    assert AwardGiven.objects.count() == 1
    assert "Best of breed" in found(judged).undecided


def test_a_finding_holds_nothing_back(judged):
    give(judged, {"cacib-dog": 3})
    publish_classes(judged)
    assert found(judged).card.findings == [
        "Number 3 has the CACIB and does not compete for it under these rules: look again. The judge decides."
    ]
    publish(judged)
    assert AwardGiven.objects.get().entry.number == 3


def test_published_awards_stay_when_the_ring_writes_on(judged):
    give(judged, {"cacib-dog": 1})
    publish_classes(judged)
    publish(judged)
    change_later(judged, "award.cacib-dog", entry(judged, 2))
    sign_again(judged)
    assert Sheet.objects.get(key=breed_sheet(judged)).signed == {"award.cacib-dog": entry(judged, 2)}
    assert [(line.words, line.entry.number) for line in found(judged).given] == [("CACIB, dogs", 1)]


def test_a_corrected_class_tells_who_would_compete_now(judged):
    give(judged, WHOLE)
    publish_classes(judged)
    assert found(judged).card.findings == []
    swapped = {
        int(entry(judged, 1)): Result(grade="excellent", place=2),
        int(entry(judged, 2)): Result(grade="excellent", place=1),
    }
    correct_class(
        who=judged.accounts["secretary"], show_class=judged.show_class, results=swapped, why="Read from the paper."
    )
    assert found(judged).card.findings[0].startswith("Number 1 has the CACIB and does not compete")


def test_awards_are_published_once(judged):
    give(judged, WHOLE)
    publish_classes(judged)
    publish(judged)
    with pytest.raises(NotNow, match="published already"):
        publish(judged)


@pytest.mark.parametrize("role", ["assistant", "steward", "writer", "judge"])
def test_only_owner_and_secretary_publish_awards(judged, role):
    with pytest.raises(Denied, match="publish results"):
        publish(judged, role)


def test_nothing_is_published_while_a_tablet_holds_edits(judged):
    give(judged, WHOLE)
    publish_classes(judged)
    Tablet.objects.create(ring=judged.ring, device="spare", seen_at="2026-06-13T09:00:00Z", unsent=3)
    with pytest.raises(NotNow, match="still holds 3 edits"):
        publish(judged)


def test_an_award_is_given_or_withheld_never_both_and_once_for_each_sex(judged):
    breed, dog = judged.show_class.show_breed, judged.entries[0]
    AwardGiven.objects.create(show_breed=breed, award="cacib", sex="dog", entry=dog)
    for wrong in (
        {"award": "cacib", "sex": "dog", "withheld": True},
        {"award": "cacib", "sex": "bitch", "entry": dog, "withheld": True},
        {"award": "best-of-breed"},
    ):
        with pytest.raises(IntegrityError), transaction.atomic():
            AwardGiven.objects.create(show_breed=breed, **wrong)


def test_an_exhibitor_reads_the_published_awards_of_own_dogs(judged):
    give(judged, WHOLE)
    publish_classes(judged)
    ada, ben = (judged.accounts[name] for name in ("ada", "ben"))
    assert [one.awards for one in own(judged, ada)] == [[]]
    publish(judged)
    assert [one.awards for one in own(judged, ada)] == [["CACIB", "Best of sex", "Best of opposite sex"]]
    assert [one.awards for one in own(judged, ben)] == [["Reserve CACIB"]]
    client = Client()
    client.force_login(ada)
    assert "CACIB, Best of sex, Best of opposite sex" in client.get("/my-dogs/").content.decode()
    assert awards_won([judged.entries[2]]) == {}


def own(at: SmallShow, who: Account) -> list:
    return [one for one in entries_of(who) if one.entry.show_class_id == at.show_class.pk]


# The tree: every award of the breed once, each dog where it stands.


def every(nodes: list[Node] | tuple[Node, ...]) -> Iterator[Node]:
    for node in nodes:
        yield node
        yield from every((*node.beside, *node.branches))


def drawn(at: SmallShow) -> dict[str, tuple[str, list[int]]]:
    nodes = every(trees_of(found(at).card))
    return {node.title: (node.state, [entry.number for entry in node.entries]) for node in nodes}


def test_the_tree_grows_from_the_classes_over_certificate_and_best_of_sex_to_best_of_breed(judged):
    [best] = trees_of(found(judged).card)
    assert (best.title, [other.title for other in best.beside]) == ("Best of breed", ["Best of opposite sex"])
    assert [branch.title for branch in best.branches] == ["Best of sex, dogs", "Best of sex, bitches"]
    [certificate] = best.branches[0].branches
    assert (certificate.title, [other.title for other in certificate.beside]) == (
        "CACIB, dogs",
        ["Reserve CACIB, dogs"],
    )
    assert [leaf.title for leaf in certificate.branches] == ["Open, dogs"]


def test_the_tree_fills_as_awards_are_given(judged):
    assert drawn(judged)["Open, dogs"] == ("placed", [1])
    assert drawn(judged)["CACIB, dogs"] == ("undecided", [])
    give(judged, {"cacib-dog": 1, "reserve-cacib-bitch": False}, sign=False)
    assert drawn(judged)["CACIB, dogs"] == ("given", [1])
    assert drawn(judged)["Reserve CACIB, bitches"] == ("withheld", [])


def test_the_tree_names_the_contenders_for_the_reserve_once_the_certificate_is_decided(judged):
    def contenders() -> list[tuple[int, str]]:
        [reserve] = [node for node in every(trees_of(found(judged).card)) if node.title == "Reserve CACIB, dogs"]
        return [(dog.number, words) for dog, words in reserve.contenders]

    assert contenders() == []
    give(judged, {"cacib-dog": 1}, sign=False)
    # French rules on the CACIB and its reserve, club copy.
    assert contenders() == [(2, "open, second")]


def test_the_tree_shows_the_way_of_the_winner(judged):
    give(judged, WHOLE)
    wins = {node.title for node in every(trees_of(found(judged).card)) if node.wins}
    assert wins == {"Open, dogs", "CACIB, dogs", "Open, bitches", "CACIB, bitches", "Best of sex, bitches"}


@pytest.mark.parametrize("rules", ["fci", "canada", "united-kingdom", "australia"])
def test_every_award_within_reach_stands_in_the_tree(judged, rules):
    judged.show.rules = rules
    judged.show.save()
    at = ShowBreed.objects.select_related("show").get(pk=judged.show_class.show_breed_id)
    [awards] = awards_of([at])
    titles = [node.title for node in every(trees_of(awards.card))]
    assert {line.words for line in awards.lines} <= set(titles)
    assert titles[0] == "Best of breed"


def test_the_pages_show_the_awards_and_what_is_missing(judged):
    give(judged, WHOLE)
    client = Client()
    client.force_login(judged.accounts["secretary"])
    page = client.get("/office/small/results/awards/").content.decode()
    assert "CACIB, dogs: <strong>1</strong>" in page
    assert "2 classes to be published first" in page
    address = f"/office/small/results/awards/{judged.show_class.show_breed_id}/"
    page = client.get(address).content.decode()
    assert '<strong>11</strong> <span class="dog-name">Dog 11</span>' in page
    assert "Publish these awards" not in page
    assert client.post(f"{address}publish/").status_code == 409
    publish_classes(judged)
    assert "Publish these awards" in client.get(address).content.decode()
    assert client.post(f"{address}publish/").status_code == 302
    assert "Exhibitors can read which awards their dogs won" in client.get(address).content.decode()


def test_a_stranger_finds_no_awards(judged):
    client = Client()
    client.force_login(judged.accounts["ada"])
    for address in ("", f"{judged.show_class.show_breed_id}/"):
        assert client.get(f"/office/small/results/awards/{address}").status_code == 404


def test_the_list_costs_the_same_number_of_queries_however_many_breeds(judged, django_assert_max_num_queries):
    with django_assert_max_num_queries(9):
        assert len(awards_of(breeds_of(judged.show))) == 2
    for breed in ("hovawart", "boxer", "bernese-mountain-dog"):
        one = ShowBreed.objects.create(show=judged.show, breed=breed, variety="more", ring=judged.ring)
        another(ShowClass.objects.create(show_breed=one, sex="dog", code="open"), 100 + one.pk)
    with django_assert_max_num_queries(9):
        assert len(awards_of(breeds_of(judged.show))) == 5
