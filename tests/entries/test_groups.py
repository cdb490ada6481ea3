"""Braces, groups and young handlers: entered by the office or with own dogs, checked, listed."""

from datetime import date

import pytest
from django.test import Client

from ringside.core.denied import Denied, NotNow
from ringside.dogs.models import Dog, Ownership
from ringside.entries.models import Entry, EntryTerms, GroupEntry
from ringside.entries.together import actions, queries
from ringside.people.models import Person
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]

TODAY = date(2026, 5, 1)


@pytest.fixture
def at() -> SmallShow:
    at = small_show()
    at.show.entries_open = date(2026, 4, 1)
    at.show.save()
    groups = ["brace", "breeders-group", "junior-handling-younger"]
    EntryTerms.objects.create(show=at.show, groups=groups)
    Dog.objects.filter(breed="boxer").update(breeder="Odo Heath")
    return at


def enter(at: SmallShow, who: str, code: str, *members: Entry, for_office: bool = True, **more) -> GroupEntry:
    told = {"name": "Of Heath", "born": None, "today": TODAY, **more}
    return actions.enter_group(
        who=at.accounts[who], show=at.show, code=code, members=members, for_office=for_office, **told
    )


def page(at: SmallShow, who: str) -> Client:
    client = Client()
    client.force_login(at.accounts[who])
    return client


def test_the_office_enters_a_breeders_group_by_number_and_by_name(at):
    members, unknown = queries.named(at.show, "1\ndog 2\n3\n")
    assert [entry.number for entry in members] == [1, 2, 3]
    assert unknown == []
    group = enter(at, "assistant", "breeders-group", *members)
    assert group.members.count() == 3
    assert "Of Heath" in page(at, "secretary").get("/office/small/entries/groups/").content.decode()


def test_a_line_that_means_no_entered_dog_is_named(at):
    _, unknown = queries.named(at.show, "99\n1\n1\nNobody")
    assert [one.code for one in unknown] == ["member-unknown", "member-twice", "member-unknown"]


def test_what_the_rules_do_not_allow_is_refused_in_words(at):
    with pytest.raises(NotNow, match="3 dogs at least are asked, 2 chosen"):
        enter(at, "secretary", "breeders-group", *at.entries[:2])
    with pytest.raises(NotNow, match="one dog and one bitch"):
        enter(at, "secretary", "brace", *at.entries[:2])
    with pytest.raises(NotNow, match="this show offers"):
        enter(at, "secretary", "progeny-group", *at.entries)


def test_of_a_young_handler_the_age_is_kept_and_the_date_of_birth_is_not(at):
    group = enter(at, "secretary", "junior-handling-younger", name="Pip Vale", born=date(2016, 6, 13))
    assert group.handler_age == 10
    assert "2016" not in str(list(GroupEntry.objects.values()))
    with pytest.raises(NotNow, match="13 years old on 13 June 2026; 12 at most"):
        enter(at, "secretary", "junior-handling-younger", name="Tam", born=date(2013, 6, 13))


def test_an_exhibitor_enters_own_dogs_only_and_only_while_entries_are_open(at):
    bitch = Dog.objects.create(name="Bee", breed="boxer", sex="bitch", born=date(2022, 5, 9))
    Ownership.objects.create(dog=bitch, person=Person.objects.get(name="ada"))
    mate = Entry.objects.create(show=at.show, dog=bitch, show_class=at.show_class)
    group = enter(at, "ada", "brace", at.entries[0], mate, for_office=False)
    assert group.account == at.accounts["ada"]
    with pytest.raises(Denied, match="somebody else"):
        enter(at, "ben", "brace", at.entries[0], mate, for_office=False)
    with pytest.raises(NotNow, match="closed"):
        enter(at, "ada", "brace", at.entries[0], mate, for_office=False, today=date(2026, 6, 13))


def test_only_dogs_that_stand_can_be_named(at):
    Entry.objects.filter(pk=at.entries[0].pk).update(state="withdrawn")
    withdrawn = Entry.objects.get(pk=at.entries[0].pk)
    with pytest.raises(NotNow, match="Only dogs that are entered"):
        enter(at, "secretary", "breeders-group", withdrawn, *at.entries[1:])


def test_a_group_is_withdrawn_by_the_office_or_by_who_entered_it(at):
    group = enter(at, "ada", "junior-handling-younger", for_office=False, name="Pip", born=date(2016, 1, 1))
    assert page(at, "ben").post(f"/enter/small/groups/{group.pk}/withdraw/").status_code == 404
    actions.withdraw_group(who=at.accounts["secretary"], group=group, for_office=True, today=TODAY)
    group.refresh_from_db()
    assert group.withdrawn_at is not None


def test_everything_wrong_is_said_at_once_and_nothing_typed_is_lost(at):
    sent = {"code": "breeders-group", "name": "Kept name", "members": "1\n77", "born": ""}
    answer = page(at, "secretary").post("/office/small/entries/groups/", sent)
    words = answer.content.decode()
    assert answer.status_code == 400
    assert "3 dogs at least are asked, 1 chosen" in words
    assert "has the number or name “77”" in words
    assert "Kept name" in words
    assert not GroupEntry.objects.exists()
