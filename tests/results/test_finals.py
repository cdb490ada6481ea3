"""The finals on the desk: who competes, what the judge decided, absent winners, publishing, correcting, cancelling."""

import pytest
from django.test import Client

from ringside.core.denied import Denied, NotNow
from ringside.core.models import AuditLine
from ringside.home.queries import awards_won
from ringside.results import final_actions, out
from ringside.results.award_corrections import award_corrections_of, cancel_awards, correct_award
from ringside.results.awards import awards_of
from ringside.results.final_tree import final_trees
from ringside.results.finals import finals_of
from ringside.results.models import AwardCorrection, AwardGiven, AwardsPublication, Final, Finalist
from ringside.shows.models import ShowBreed
from tests.papers import reading
from tests.results.structure import problems
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def at() -> SmallShow:
    """Dog 1 is best boxer, dog 2 has the reserve certificate, dog 4 is best Hovawart: all published."""
    found = small_show()
    give(found.show_class.show_breed, ("cacib", "dog", found.entries[0]), ("reserve-cacib", "dog", found.entries[1]),
         ("best-of-breed", "", found.entries[0]))  # fmt: skip
    give(found.other_class.show_breed, ("best-of-breed", "", found.other_entry))
    return found


def give(breed: ShowBreed, *rows) -> None:
    AwardsPublication.objects.create(show_breed=breed)
    for award, sex, entry in rows:
        AwardGiven.objects.create(show_breed=breed, award=award, sex=sex, entry=entry)


def hold(at: SmallShow) -> Final:
    final_actions.hold_finals(who=at.accounts["secretary"], show=at.show)
    return Final.objects.get(award="best-in-group", group="2")


def record(at: SmallShow, final: Final, *places: int, absent=(), is_signed=True, who="assistant"):
    if final.judge is None:
        final_actions.name_judge(who=at.accounts["secretary"], final=final, name="Jo Finch", email="")
    return final_actions.record_final(
        who=at.accounts[who], final=final, places=places, absent=absent, is_signed=is_signed
    )


def best_in_show(at: SmallShow) -> Final:
    return Final.objects.get(award="best-in-show")


def test_the_winners_of_both_breeds_compete_in_their_group(at):
    stand = final_actions.stands_of(hold(at))
    assert [one.entry.number for one in stand.competing] == [1, 4]
    assert stand.competing[0].why == "Competes as the winner of Best of breed."
    assert (stand.state, stand.title) == (
        "to come", "Best in group: Pinscher and Schnauzer, molossoid, Swiss mountain and cattle dogs",
    )  # fmt: skip


def test_a_winner_signed_and_not_yet_published_competes_too(at):
    from ringside.ring.models import Sheet

    AwardsPublication.objects.filter(show_breed=at.other_class.show_breed).delete()
    AwardGiven.objects.filter(show_breed=at.other_class.show_breed).delete()
    Sheet.objects.create(
        key=f"breed:{at.other_class.show_breed_id}", ring=at.other_ring, show_breed=at.other_class.show_breed,
        signed={"award.best-of-breed": str(at.other_entry.pk)},
    )  # fmt: skip
    assert [one.entry.number for one in final_actions.stands_of(hold(at)).competing] == [1, 4]


def test_the_first_of_the_group_goes_on_to_best_in_show(at):
    group = hold(at)
    assert final_actions.stands_of(best_in_show(at)).waits_for == (final_actions.stands_of(group).title,)
    assert record(at, group, 4, 1).state == "signed"
    stand = final_actions.stands_of(best_in_show(at))
    assert [one.entry.number for one in stand.competing] == [4]
    assert stand.waits_for == ()


def test_a_winner_that_did_not_come_is_absent_and_cannot_be_placed(at):
    stand = record(at, hold(at), 4, absent=[1], is_signed=False)
    assert [(one.entry.number, one.is_absent) for one in stand.competing] == [(1, True), (4, False)]
    assert stand.state == "being judged"
    with pytest.raises(NotNow, match="placed and marked as not there"):
        record(at, stand.row, 1, absent=[1])


def test_a_final_where_nobody_came_is_signed_without_a_place(at):
    assert record(at, hold(at), absent=[1, 4]).state == "signed"


def test_what_cannot_be_is_refused_and_nothing_is_written(at):
    group = hold(at)
    for places, words in (((9,), "No dog of this show"), ((1, 1), "one place"), ((1, 4, 2, 3), "places 3 dogs")):
        with pytest.raises(NotNow, match=words):
            record(at, group, *places)
    with pytest.raises(NotNow, match="Missing: the places"):
        record(at, group)
    assert not Finalist.objects.exists()


def test_a_dog_that_does_not_compete_may_be_placed_and_that_is_said(at):
    stand = record(at, hold(at), 3)
    assert stand.findings == (
        "Number 3 has the Best in group and does not compete for it under these rules: look again. The judge decides.",
    )


def test_a_final_is_signed_only_with_its_judge_and_keeps_it(at):
    group = hold(at)
    with pytest.raises(NotNow, match="the name of its judge"):
        final_actions.record_final(who=at.accounts["assistant"], final=group, places=[1], absent=[], is_signed=True)
    record(at, group, 1)
    with pytest.raises(NotNow, match="keeps its judge"):
        final_actions.name_judge(who=at.accounts["secretary"], final=group, name="Another", email="")


def test_only_a_signed_final_is_published_and_once(at):
    group = hold(at)
    with pytest.raises(NotNow, match="the judge's signature on the paper"):
        final_actions.publish_final(who=at.accounts["secretary"], final=group)
    record(at, group, 4, 1)
    assert awards_won([at.other_entry])[at.other_entry.pk] == ["Best of breed"]
    final_actions.publish_final(who=at.accounts["secretary"], final=group)
    assert awards_won([at.other_entry])[at.other_entry.pk][1].startswith("Best in group: ")
    assert awards_won([at.entries[0]])[at.entries[0].pk][-1].endswith(", place 2")
    with pytest.raises(NotNow, match="published already"):
        final_actions.publish_final(who=at.accounts["secretary"], final=group)
    with pytest.raises(NotNow, match="is a correction"):
        record(at, group, 1)


@pytest.mark.parametrize("who", ["steward", "writer", "judge"])
def test_only_the_office_records_finals(at, who):
    with pytest.raises(Denied, match="record what the judges of the finals decide"):
        record(at, hold(at), 1, who=who)


def test_a_published_final_is_corrected_with_its_reason_and_it_shows(at):
    group = hold(at)
    record(at, group, 4, 1)
    final_actions.publish_final(who=at.accounts["secretary"], final=group)
    with pytest.raises(NotNow, match="Write down why"):
        final_actions.correct_final(who=at.accounts["secretary"], final=group, places=[1, 4], why=" ")
    final_actions.correct_final(who=at.accounts["secretary"], final=group, places=[1, 4], why="Numbers mixed up.")
    told = award_corrections_of(at.show)
    assert [(one.what[-7:], one.before, one.after, one.correction.why) for one in told] == [
        ("place 1", "4 Dog 4", "1 Dog 1", "Numbers mixed up."), ("place 2", "1 Dog 1", "4 Dog 4", "Numbers mixed up."),
    ]  # fmt: skip
    assert AuditLine.objects.filter(doing="correct-final").count() == 1


def test_a_cancelled_certificate_passes_to_the_reserve_and_best_of_breed_stays_empty(at):
    group = hold(at)
    record(at, group, 1, 4)
    final_actions.publish_final(who=at.accounts["secretary"], final=group)
    cancel_awards(who=at.accounts["secretary"], entry=at.entries[0], why="Disqualified by the body.")
    boxer = at.show_class.show_breed
    rows = AwardGiven.objects.filter(show_breed=boxer).order_by("id").values_list("award", "entry__number", "cancelled")
    assert list(rows) == [("cacib", 2, False), ("reserve-cacib", None, True), ("best-of-breed", None, True)]
    assert list(Finalist.objects.values_list("entry__number", "place")) == [(4, 2)]
    assert final_actions.stands_of(best_in_show(at)).competing == ()
    causes = AwardCorrection.objects.order_by("id").values_list("cause", flat=True)
    assert list(causes) == ["passed-on", "passed-on", "cancelled", "cancelled"]
    assert awards_won([at.entries[0]]) == {}
    client = Client()
    client.force_login(at.accounts["ada"])
    assert "No longer has Boxer: Best of breed" in client.get("/my-dogs/").content.decode()
    client.force_login(at.accounts["ben"])
    page = client.get(f"/my-dogs/{at.entries[1].dog_id}/").content.decode()
    assert "Has Boxer: CACIB, dogs: corrected on" in page
    assert "Disqualified by the body." in page
    [found] = awards_of([boxer])
    assert found.card.findings == []
    assert awards_won([at.entries[1]])[at.entries[1].pk] == ["CACIB"]
    with pytest.raises(NotNow, match="no published award"):
        cancel_awards(who=at.accounts["secretary"], entry=at.entries[0], why="Again.")


def test_an_award_that_passed_on_and_then_went_to_a_dog_that_does_not_compete_is_looked_at_again(at):
    boxer, secretary = at.show_class.show_breed, at.accounts["secretary"]
    cancel_awards(who=secretary, entry=at.entries[0], why="Disqualified by the body.")
    correct_award(who=secretary, show_breed=boxer, code="cacib-dog", number=3, why="Misread.")
    [found] = awards_of([boxer])
    assert [words.partition(":")[0] for words in found.card.findings] == [
        "Number 3 has the CACIB and does not compete for it under these rules"
    ]


def test_one_award_is_corrected_and_it_shows(at):
    made = correct_award(
        who=at.accounts["secretary"], show_breed=at.show_class.show_breed, code="best-of-breed", number=2,
        why="Written down wrongly.",
    )  # fmt: skip
    assert (made.before.number, made.after.number) == (1, 2)
    [told] = award_corrections_of(at.show, at.show_class.show_breed)
    assert (told.what, told.before, told.after) == ("Boxer: Best of breed", "1 Dog 1", "2 Dog 2")
    for number, words in ((2, "Nothing is changed"), (4, "of this breed")):
        with pytest.raises(NotNow, match=words):
            correct_award(
                who=at.accounts["secretary"], show_breed=at.show_class.show_breed, code="best-of-breed",
                number=number, why="x",
            )  # fmt: skip


def test_a_breed_put_into_another_group_competes_there(at):
    final_actions.put_in_group(who=at.accounts["secretary"], show_breed=at.other_class.show_breed, group="1")
    assert [one.entry.number for one in final_actions.stands_of(hold(at)).competing] == [1]
    with pytest.raises(NotNow, match="no such group"):
        final_actions.put_in_group(who=at.accounts["secretary"], show_breed=at.other_class.show_breed, group="77")


def test_a_final_that_has_begun_is_not_dropped(at):
    group = hold(at)
    final_actions.drop_final(who=at.accounts["secretary"], final=best_in_show(at))
    record(at, group, 1, is_signed=False)
    with pytest.raises(NotNow, match="has begun"):
        final_actions.drop_final(who=at.accounts["secretary"], final=group)


def test_the_tree_leads_from_the_breeds_over_the_group_to_best_in_show(at):
    record(at, hold(at), 4, 1)
    record(at, best_in_show(at), 4)
    root = final_trees(finals_of(at.show))[0]
    assert (root.title, [entry.number for entry in root.entries]) == ("Best in show", [4])
    [group] = root.branches
    assert (group.wins, [entry.number for entry in group.entries]) == (True, [4, 1])
    assert [(leaf.title, leaf.wins) for leaf in group.branches] == [("Boxer", False), ("Hovawart", True)]


def test_the_pages_record_publish_and_keep_what_was_typed(at):
    client = Client()
    client.force_login(at.accounts["secretary"])
    base = "/office/small/results/finals/"
    client.post(f"{base}hold/")
    group = Final.objects.get(award="best-in-group")
    client.post(f"{base}{group.pk}/judge/", {"name": "Jo Finch", "email": ""})
    page = client.post(f"{base}{group.pk}/", {"place_1": "99", "is_signed": "on"}).content.decode()
    assert "No dog of this show has the number 99." in page
    assert 'value="99"' in page
    page = client.post(f"{base}{group.pk}/", {"place_2": "4"}).content.decode()
    assert "fill the place left empty" in page
    assert client.post(f"{base}{group.pk}/", {"place_1": "4", "place_2": "1", "is_signed": "on"}).status_code == 302
    assert "Publish this final" in client.get(f"{base}{group.pk}/").content.decode()
    assert client.post(f"{base}{group.pk}/publish/").status_code == 302
    assert client.post(f"{base}{group.pk}/correct/", {"place_1": "1", "why": "Misread."}).status_code == 302
    page = client.get(base).content.decode()
    for words in ("Jo Finch", "Awards corrected after publishing", "Misread.", "From memory, check with the body"):
        assert words in page
    assert "Hovawart" in client.get(f"{base}groups/").content.decode()


def test_the_pages_correct_and_cancel_awards_and_say_so(at):
    client = Client()
    client.force_login(at.accounts["secretary"])
    base = f"/office/small/results/awards/{at.show_class.show_breed_id}/"
    page = client.post(f"{base}correct/", {"code": "cacib-dog", "number": "77", "why": "x"}).content.decode()
    assert "has the number 77." in page
    assert client.post(f"{base}cancel/", {"number": "1", "why": "Disqualified by the body."}).status_code == 302
    page = client.get(base).content.decode()
    for words in ("Boxer: CACIB, dogs", "passed on as the rules say", "Disqualified by the body.", "cancelled"):
        assert words in page
    assert "that the reserve moves up" in page


def test_finals_and_corrections_stand_in_the_paper_and_the_files(at):
    group = hold(at)
    record(at, group, 4, 1)
    final_actions.publish_final(who=at.accounts["secretary"], final=group)
    cancel_awards(who=at.accounts["secretary"], entry=at.entries[0], why="Disqualified by the body.")
    client = Client()
    client.force_login(at.accounts["secretary"])
    text = " ".join(reading.text(client.get("/papers/show/small/results.pdf").content).split())
    for words in ("Finals", "judge Jo Finch", "4 Dog 4 Hovawart", "Corrected after publishing", "Boxer: CACIB, dogs"):
        assert words in text
    told = client.get("/office/small/results/out/results.json").json()
    assert problems(told, out.schema("results")) == []
    assert [(one["place"], one["number"]) for one in told["finals"]] == [(1, 4)]
    assert [(one["award"], one["state"], one["number"]) for one in told["awards"]] == [
        ("cacib", "given", 2), ("reserve-cacib", "cancelled", None), ("best-of-breed", "cancelled", None),
        ("best-of-breed", "given", 4),
    ]  # fmt: skip
    assert [one["cause"] for one in told["award_corrections"]] == ["passed-on", "passed-on", "cancelled", "cancelled"]
    rows = client.get("/office/small/results/out/awards.csv").content.decode("utf-8-sig").splitlines()
    assert rows[0].startswith("Award;Breed or group;Sex;Place;Number")
    assert rows[1].startswith("CACIB;Boxer;dog;;2;Dog 2")
    assert len(rows) == 4


def test_the_finals_cost_the_same_number_of_queries_however_many_breeds(at, django_assert_max_num_queries):
    hold(at)
    with django_assert_max_num_queries(9):
        assert finals_of(at.show).stands
