"""A dog in two classes with one number: at the ring, on the desk, in the awards, the finals and the corrections.

That a dog beaten in one class is not unbeaten in another is from memory: the tests hold the program to its own data.
"""

import pytest
from django.test import Client

from ringside.core.denied import NotNow
from ringside.results import day_actions, final_actions, paper_awards
from ringside.results.award_corrections import cancel_awards, correct_award
from ringside.results.award_tree import trees_of
from ringside.results.awards import awards_of
from ringside.results.finals import finals_of
from ringside.results.models import AwardGiven, AwardsPublication, Final, Finalist
from tests.results.writing import Pen
from tests.several_classes import british_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]
CC, RESERVE = "challenge-certificate-dog", "reserve-challenge-certificate-dog"


@pytest.fixture
def judged():
    """Limit: 1, 3. Open: 1, 2, 3. Both signed."""
    at, entries = british_show()
    pen = Pen(at)
    for code, places in (("limit", (1, 3)), ("open", (1, 2, 3))):
        card = f"class:{entries[code, 1].show_class_id}"
        pen.write(card, {"places": [str(entries[code, number].pk) for number in places]})
        pen.sign(card)
    return at, entries


@pytest.fixture
def given():
    """Dog 1 has the certificate by one entry and best of breed by the other, dog 2 the reserve; all published."""
    at, entries = british_show()
    breed = at.show_class.show_breed
    AwardsPublication.objects.create(show_breed=breed)
    for award, sex, entry in (
        ("challenge-certificate", "dog", entries["open", 1]),
        ("reserve-challenge-certificate", "dog", entries["open", 2]),
        ("best-of-breed", "", entries["limit", 1]),
    ):
        AwardGiven.objects.create(show_breed=breed, award=award, sex=sex, entry=entry)
    AwardsPublication.objects.create(show_breed=at.other_class.show_breed)
    AwardGiven.objects.create(show_breed=at.other_class.show_breed, award="best-of-breed", entry=at.other_entry)
    return at, entries


def client_of(at, name: str) -> Client:
    client = Client()
    client.force_login(at.accounts[name])
    return client


def competing(at) -> dict[str, list[int]]:
    path = f"/ring/{at.ring.pk}/breeds/{at.show_class.show_breed_id}/candidates/"
    told = client_of(at, "judge").get(path).json()
    return {one["code"]: [each["number"] for each in one["candidates"]] for one in told["awards"]}


def test_a_dog_competes_once_and_one_beaten_in_another_class_does_not(judged):
    at, _ = judged
    assert competing(at)[CC] == [1]
    # 3 is second to the winner in limit, but 2 stood before it in open.
    Pen(at).write(f"breed:{at.show_class.show_breed_id}", {f"award.{CC}": str(judged[1]["open", 1].pk)})
    assert competing(at)[RESERVE] == [2]


def test_the_tablet_knows_a_dog_by_its_number_alone(judged):
    at, entries = judged
    day = client_of(at, "judge").get(f"/ring/{at.ring.pk}/day/").json()
    shown = [entry for one in day["classes"] for entry in one["entries"]]
    assert sorted(one["number"] for one in shown) == [1, 1, 2, 3, 3]
    assert {key for one in shown for key in one} == {"id", "sheet", "number", "sex", "months"}
    assert not any(entry.dog.name in str(day) for entry in entries.values())


def test_what_is_judged_in_another_ring_comes_with_the_dogs_numbers(judged):
    at, entries = judged
    at.other_class.show_breed.appointments.all().delete()
    at.show_class.show_breed.appointments.create(sex="dog", code="limit", ring=at.other_ring)
    [breed] = client_of(at, "judge").get(f"/ring/{at.ring.pk}/day/").json()["breeds"]
    [limit] = breed["elsewhere"]
    assert {one["entry"]: one["dog"] for one in limit["standings"]} == {
        str(entries["limit", 1].pk): "1", str(entries["limit", 3].pk): "3",
    }  # fmt: skip


def test_a_number_typed_from_paper_means_the_entry_that_competes(judged):
    at, entries = judged
    breed = at.show_class.show_breed
    card = paper_awards.card_as_typed(breed, {CC: 1, RESERVE: 2, "best-of-sex-dog": 1, "best-of-breed": 1})
    assert (card.decided[CC], card.decided[RESERVE]) == (str(entries["limit", 1].pk), str(entries["open", 2].pk))
    assert card.findings == []
    assert paper_awards.card_as_typed(breed, {CC: 3}).findings != []
    with pytest.raises(NotNow, match="No dog of this breed has the number 4"):
        paper_awards.card_as_typed(breed, {CC: 4})


def test_the_tree_shows_that_the_dog_goes_on_from_every_class_it_won(judged):
    at, entries = judged
    pen = Pen(at)
    pen.write(f"breed:{at.show_class.show_breed_id}", {f"award.{CC}": str(entries["open", 1].pk)})
    [found] = awards_of([at.show_class.show_breed])
    trees, wins = trees_of(found.card), []
    while trees:
        node = trees.pop()
        trees += node.branches
        wins += [node.title] if node.wins else []
    assert wins == ["Open, dogs", "Limit, dogs"]


def test_the_day_desk_shows_all_entries_of_a_number(judged):
    at, entries = judged
    office = client_of(at, "secretary")
    assert office.get("/office/small/results/day/?number=2").status_code == 302
    page = office.get("/office/small/results/day/?number=1").content.decode()
    for code in ("limit", "open"):
        assert f'/day/{entries[code, 1].show_class_id}/#entry-{entries[code, 1].pk}"' in page
    assert "Dog 1" in page
    unknown = office.get("/office/small/results/day/?number=77").content.decode()
    assert "No dog of this show has the number 77." in unknown


def test_a_report_names_the_dog_of_the_number(judged):
    at, entries = judged
    report = day_actions.write_report(who=at.accounts["assistant"], show=at.show, kind="bite", number=3, text="Bit.")
    assert report.entry.dog == entries["limit", 3].dog


def test_a_dog_in_the_finals_is_one_whichever_of_its_entries_has_the_award(given):
    at, _ = given
    final_actions.hold_finals(who=at.accounts["secretary"], show=at.show)
    final = Final.objects.get(award="best-in-show")
    group = Final.objects.get(award="best-in-group", group="working")
    for one in (group, final):
        final_actions.name_judge(who=at.accounts["secretary"], final=one, name="Jo Finch", email="")
    told = final_actions.record_final(
        who=at.accounts["assistant"], final=group, places=[1, 4], absent=[], is_signed=True
    )
    assert ([one.entry.number for one in told.competing], told.findings) == ([1, 4], ())
    told = final_actions.record_final(who=at.accounts["assistant"], final=final, places=[1], absent=[], is_signed=True)
    assert ([one.entry.number for one in told.competing], told.findings) == ([1], ())


def test_a_final_recorded_by_another_entry_of_the_dog_stands(given):
    at, entries = given
    final_actions.hold_finals(who=at.accounts["secretary"], show=at.show)
    group = Final.objects.get(award="best-in-group", group="working")
    Finalist.objects.create(final=group, entry=entries["limit", 1], place=1)
    AwardGiven.objects.filter(award="best-of-breed", entry=entries["limit", 1]).update(entry=entries["open", 1])
    found = finals_of(at.show)
    stand = found.stand(next(one for one in found.offered if one.key == ("best-in-group", "working")))
    assert stand.findings == ()
    assert [(place, entry.number) for place, entry in stand.placed] == [(1, 1)]


def test_a_correction_to_another_entry_of_the_dog_changes_nothing(given):
    at, _ = given
    with pytest.raises(NotNow, match="Nothing is changed"):
        correct_award(who=at.accounts["secretary"], show_breed=at.show_class.show_breed, code=CC, number=1, why="Why")
    made = correct_award(
        who=at.accounts["secretary"], show_breed=at.show_class.show_breed, code=CC, number=3, why="Misread"
    )
    assert (made.before.number, made.after.number) == (1, 3)


def test_cancelling_takes_the_awards_of_all_entries_of_the_dog(given):
    at, entries = given
    made = cancel_awards(who=at.accounts["secretary"], entry=entries["limit", 1], why="Barred")
    assert {one.award for one in made} == {"challenge-certificate", "reserve-challenge-certificate", "best-of-breed"}
    now = dict(AwardGiven.objects.filter(show_breed=at.show_class.show_breed).values_list("award", "entry"))
    # The reserve's holder gets the certificate (United Kingdom, meaning of the two certificates).
    assert now["challenge-certificate"] == entries["open", 2].pk
    assert (now["reserve-challenge-certificate"], now["best-of-breed"]) == (None, None)
