"""Appointments by breed and variety: made, changed, taken away; what follows its breed and what was set apart.

That a judge is appointed to a breed with all its varieties, or to one of them, is common practice.
"""

import pytest
from django.test import Client

from ringside.core.denied import NotNow
from ringside.dogs.models import Ownership
from ringside.entries.checking import Wanted
from ringside.entries.taking import Classes
from ringside.people.models import Account, Person
from ringside.ring.models import Sheet
from ringside.shows import actions, appointing
from ringside.shows.books import rules_of
from ringside.shows.forms import BreedForm, unit_choices
from ringside.shows.models import Appointment, Role, Show, ShowBreed, ShowClass
from tests.ring.test_awards import another
from tests.shows_for_tests import FIRST_DAY, SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]
WIRE, LONG = "miniature-wire-haired", "miniature-long-haired"


@pytest.fixture
def at() -> SmallShow:
    return small_show()


@pytest.fixture
def office(at) -> Client:
    client = Client()
    client.force_login(at.accounts["secretary"])
    return client


def appoint(at: SmallShow, breed: str = "dachshund", variety: str = "", name: str = "Nia Velvetine", ring: str = "3"):
    email = f"{name.split()[0].lower()}@small.example"
    told = {"breed": breed, "variety": variety, "judge_name": name, "judge_email": email, "ring": ring}
    return actions.appoint(who=at.accounts["secretary"], show=at.show, day=FIRST_DAY, **told)


def judge_of(variety: str) -> str:
    return str(ShowBreed.objects.get(breed="dachshund", variety=variety).judge)


def page_of(breed: ShowBreed) -> str:
    return f"/office/small/breeds/{breed.pk}/"


def take_away(at: SmallShow, breed: ShowBreed) -> bool:
    return appointing.take_appointment_away(who=at.accounts["secretary"], show_breed=breed)


def test_one_choice_holds_every_breed_and_each_of_its_varieties():
    words = dict(unit_choices())
    assert words["boxer"] == "Boxer"
    assert words["dachshund"] == "Dachshund: all varieties"
    assert words[f"dachshund:{WIRE}"].startswith("Dachshund: ")


def test_the_set_up_page_appoints_all_varieties_or_one(at, office):
    sent = {"judge_name": "Nia Velvetine", "judge_email": "nia@small.example", "ring": "3", "day": "2026-06-13"}
    office.post("/office/small/appoint/", {**sent, "breed": "dachshund"})
    office.post("/office/small/appoint/", {**sent, "breed": f"dachshund:{WIRE}", "judge_name": "Ola Quill",
                                           "judge_email": "ola@small.example"})  # fmt: skip
    assert (judge_of(""), judge_of(WIRE)) == ("Nia Velvetine", "Ola Quill")


def test_varieties_go_along_with_their_breed_but_for_those_set_apart(at):
    appoint(at)
    ShowBreed.objects.create(show=at.show, breed="dachshund", variety=LONG, judge=Person.objects.get(
        name="Nia Velvetine"), ring=ShowBreed.objects.get(breed="dachshund").ring, day=FIRST_DAY)  # fmt: skip
    appoint(at, variety=WIRE, name="Ola Quill")
    appoint(at, name="Pim Dray", ring="4")
    assert [judge_of(one) for one in ("", LONG, WIRE)] == ["Pim Dray", "Pim Dray", "Ola Quill"]


def test_of_a_judge_of_the_show_the_name_is_enough(at):
    appoint(at)
    told = {"breed": "boxer", "judge_name": "nia velvetine", "judge_email": "", "ring": "1", "day": "2026-06-13"}
    form = BreedForm(told, show=at.show)
    assert form.is_valid()
    assert (form.cleaned_data["judge_name"], form.cleaned_data["judge_email"]) == ("Nia Velvetine", "nia@small.example")
    unknown = BreedForm({**told, "judge_name": "Ola Quill"}, show=at.show)
    assert "judge_email" in unknown.errors


def test_two_judges_of_one_name_are_not_guessed_between(at):
    appoint(at)
    actions.appoint(who=at.accounts["secretary"], show=at.show, breed="rottweiler", judge_name="Nia Velvetine",
                    judge_email="other@small.example", ring="4", day=FIRST_DAY)  # fmt: skip
    told = {"breed": "boxer", "judge_name": "Nia Velvetine", "ring": "1", "day": "2026-06-13"}
    assert "judge_email" in BreedForm(told, show=at.show).errors


def test_a_breed_is_given_another_judge_on_its_own_page(at, office):
    breed = at.show_class.show_breed
    page = office.get(page_of(breed)).content.decode()
    assert 'value="judge@small.example"' in page
    sent = {"judge_name": "other-judge", "ring": "9", "day": "2026-07-01"}
    wrong = office.post(f"{page_of(breed)}whole/", sent)
    assert wrong.status_code == 400
    assert 'value="9"' in wrong.content.decode()
    office.post(f"{page_of(breed)}whole/", {**sent, "day": "2026-06-13"})
    breed = ShowBreed.objects.get(pk=breed.pk)
    assert (breed.judge.name, breed.ring.name) == ("other-judge", "9")
    # Who is appointed nowhere any more is let into no ring.
    assert not Role.objects.filter(account=at.accounts["judge"]).exists()


def test_own_dogs_are_named_where_the_appointment_can_still_change(at, office):
    Ownership.objects.create(dog=at.entries[1].dog, person=Person.objects.get(name="judge"))
    assert "Dog 2" in office.get(page_of(at.show_class.show_breed)).content.decode()


def test_a_part_is_taken_up_in_the_form_and_given_back_by_one_button(at, office):
    breed = at.show_class.show_breed
    sent = {"part": "dog:open", "judge_name": "other-judge", "ring": "7"}
    office.post(page_of(breed), sent)
    page = office.get(f"{page_of(breed)}?part=dog:open").content.decode()
    assert 'value="other-judge@small.example"' in page
    assert '<option value="dog:open" selected>' in page
    office.post(page_of(breed), {"part": "dog:open"})
    assert not Appointment.objects.exists()


def test_an_appointment_by_mistake_takes_the_breed_out_where_no_dog_is_entered(at, office):
    appoint(at, breed="rottweiler")
    breed = ShowBreed.objects.get(breed="rottweiler")
    Appointment.objects.create(show_breed=breed, sex="dog", ring=at.ring)
    page = office.post(f"{page_of(breed)}take-away/", follow=True).content.decode()
    assert "Rottweiler is taken out of the show: no dog was entered." in page
    assert not ShowBreed.objects.filter(breed="rottweiler").exists()
    assert not Role.objects.filter(account=Account.objects.get(email="nia@small.example")).exists()


def test_a_breed_with_dogs_stays_and_waits_for_a_judge_again(at, office):
    breed = at.show_class.show_breed
    page = office.post(f"{page_of(breed)}take-away/", follow=True).content.decode()
    assert "The appointment is taken away. The dogs entered stay." in page
    breed = ShowBreed.objects.get(pk=breed.pk)
    assert (breed.judge, breed.ring, breed.day) == (None, None, None)
    assert breed.classes.get().entries.count() == 3


def test_a_variety_set_apart_by_mistake_is_judged_with_its_breed_again(at):
    appoint(at)
    variety = appoint(at, variety=WIRE, name="Ola Quill", ring="4")
    another(ShowClass.objects.create(show_breed=variety, sex="dog", code="open"), 30)
    assert not take_away(at, variety)
    assert judge_of(WIRE) == "Nia Velvetine"


def appoint_part(at: SmallShow, unit: ShowBreed, sex: str, ring: str) -> None:
    told = {"judge_name": "", "judge_email": "", "ring": ring, "day": None}
    appointing.appoint_part(who=at.accounts["secretary"], show_breed=unit, sex=sex, code="", **told)


def rings_of(variety: str) -> dict[str, str]:
    unit = ShowBreed.objects.get(breed="dachshund", variety=variety)
    return {sex: unit.appointed_for(sex).ring.name for sex in ("dog", "bitch")}


def test_a_part_of_a_breed_holds_for_its_varieties_but_for_those_set_apart(at):
    whole = appoint(at)
    told = {"judge": whole.judge, "ring": whole.ring, "day": whole.day}
    long = ShowBreed.objects.create(show=at.show, breed="dachshund", variety=LONG, **told)
    wire = ShowBreed.objects.create(show=at.show, breed="dachshund", variety=WIRE, **told)
    appoint_part(at, wire, "bitch", ring="9")
    appoint_part(at, whole, "bitch", ring="4")
    assert [rings_of(one) for one in ("", LONG, WIRE)] == [
        {"dog": "3", "bitch": "4"}, {"dog": "3", "bitch": "4"}, {"dog": "3", "bitch": "9"},
    ]  # fmt: skip
    appoint_part(at, whole, "bitch", ring="")
    assert (rings_of(LONG), rings_of(WIRE)["bitch"]) == ({"dog": "3", "bitch": "3"}, "9")
    assert not long.appointments.exists()


def test_a_variety_that_entries_bring_in_is_judged_in_the_parts_of_its_breed(at):
    appoint_part(at, appoint(at), "bitch", ring="4")
    Classes(at.show, rules_of(at.show)).of(Wanted(breed="dachshund", variety=LONG, sex="bitch", class_code="open"))
    assert rings_of(LONG) == {"dog": "3", "bitch": "4"}


def test_varieties_wait_for_a_judge_when_that_of_their_breed_was_a_mistake(at):
    whole = appoint(at)
    for variety, judge in ((LONG, whole.judge), (WIRE, at.other_class.show_breed.judge)):
        ShowBreed.objects.create(show=at.show, breed="dachshund", variety=variety, judge=judge, ring=whole.ring,
                                 day=FIRST_DAY)  # fmt: skip
    assert take_away(at, whole)
    assert (judge_of(LONG), judge_of(WIRE)) == ("None", "other-judge")


def test_what_is_written_already_holds_the_appointment(at, office):
    Sheet.objects.create(key=f"entry:{at.entries[0].pk}", ring=at.ring, entry=at.entries[0])
    with pytest.raises(NotNow):
        take_away(at, at.show_class.show_breed)
    page = office.post(f"{page_of(at.show_class.show_breed)}take-away/", follow=True).content.decode()
    assert "Something of this breed is written or signed already." in page
    assert Show.objects.get().breeds.get(breed="boxer").judge.name == "judge"


def test_a_judge_of_the_show_takes_over_by_name_alone(at, office):
    judge = Person.objects.get(name="judge")
    office.post(f"/office/small/judges/{judge.pk}/replace/", {"name": "Other-Judge", "email": "", "why": "ill"})
    assert ShowBreed.objects.get(breed="boxer").judge == Person.objects.get(name="other-judge")
