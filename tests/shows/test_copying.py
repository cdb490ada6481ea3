"""Last year's show as a start: everything of its set-up, shifted; nothing of its entries."""

from datetime import date, timedelta
from decimal import Decimal

import pytest
from django.test import Client

from ringside.core.denied import Denied
from ringside.entries.models import Entry, EntryTerms
from ringside.entries.proofs.actions import ask_terms
from ringside.fees import setting
from ringside.fees.models import FeeLine, Membership, Terms
from ringside.people.models import Account
from ringside.shows.appointing import appoint_part
from ringside.shows.copying import copy_show
from ringside.shows.models import Role, Show, ShowClass
from tests.shows_for_tests import FIRST_DAY, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]
NEXT = date(2027, 6, 12)


@pytest.fixture
def at():
    found = small_show()
    Account.objects.filter(pk=found.accounts["secretary"].pk).update(runs_site=True)
    found.accounts["secretary"].refresh_from_db()
    Show.objects.update(entries_close=date(2026, 5, 17), classes_offered=["open"], critiques_public=True)
    found.show.refresh_from_db()
    appoint_part(
        who=found.accounts["secretary"], show_breed=found.show_class.show_breed, sex="dog", code="open",
        judge_name="Nia Velvetine", judge_email="nia@small.example", ring="3", day=FIRST_DAY,
    )  # fmt: skip
    return found


def test_days_move_with_the_first_and_everything_of_the_set_up_comes_along(at):
    new = copy_show(who=at.accounts["secretary"], source=at.show, name="Small Show 2027", first_day=NEXT)
    assert (new.last_day, new.entries_close) == (NEXT, date(2026, 5, 17) + (NEXT - FIRST_DAY))
    assert (new.rules, new.classes_offered, new.critiques_public) == ("fci", ["open"], True)
    assert sorted(new.rings.values_list("name", flat=True)) == ["1", "2", "3"]
    told = ShowClass.objects.get(show_breed__show=new, show_breed__breed="boxer").appointed
    assert (told.judge.name, told.ring.name, told.ring.show, told.day) == ("Nia Velvetine", "3", new, NEXT)
    assert new.entries.count() == 0
    assert Entry.objects.filter(show=at.show).count() == 4


def test_what_the_show_charges_comes_along_with_its_days_and_nobodys_money(at):
    secretary, person = at.accounts["secretary"], at.entries[0].dog.owners.get()
    told = {"who": secretary, "show": at.show}
    setting.set_terms(**told, currency="GBP", club="Small Club", pay_by=FIRST_DAY)
    line = {"turn": "first-dog", "membership": "member", "classes": ["open"], "amount": Decimal("25.50")}
    setting.add_line(**told, **line, name="Late", first_day=date(2026, 5, 1), last_day=None)
    setting.set_member(**told, person=person, is_member=True)
    new = copy_show(who=secretary, source=at.show, name="Small Show 2027", first_day=NEXT)
    terms, copied = Terms.objects.get(show=new), FeeLine.objects.get(show=new)
    assert (terms.currency, terms.club, terms.pay_by, terms.last_invoice) == ("GBP", "Small Club", NEXT, 0)
    assert {name: getattr(copied, name) for name in line} == line
    assert (copied.name, copied.first_day, copied.last_day) == ("Late", date(2026, 5, 1) + (NEXT - FIRST_DAY), None)
    assert not Membership.objects.filter(show=new).exists()


def test_what_the_show_asks_of_its_entries_comes_along(at):
    secretary = at.accounts["secretary"]
    ask_terms(who=secretary, show=at.show, vaccination="Rabies, 21 days old", groups=["brace"])
    new = copy_show(who=secretary, source=at.show, name="Small Show 2027", first_day=NEXT)
    terms = EntryTerms.objects.get(show=new)
    assert (terms.vaccination, terms.groups) == ("Rabies, 21 days old", ["brace"])


def test_judges_may_work_in_the_new_show_and_nobody_else_but_its_owner(at):
    new = copy_show(who=at.accounts["secretary"], source=at.show, name="Small Show 2027", first_day=NEXT)
    roles = Role.objects.filter(show=new).values_list("account__email", "kind")
    assert sorted(roles) == [
        ("judge@small.example", "judge"), ("nia@small.example", "judge"), ("other-judge@small.example", "judge"),
        ("secretary@small.example", "owner"), ("secretary@small.example", "secretary"),
    ]  # fmt: skip


def test_whoever_may_not_start_shows_copies_none(at):
    Account.objects.update(runs_site=False)
    at.accounts["secretary"].refresh_from_db()
    with pytest.raises(Denied):
        copy_show(who=at.accounts["secretary"], source=at.show, name="Small Show 2027", first_day=NEXT)
    assert Show.objects.count() == 1


def test_the_page_makes_the_show_and_refuses_a_name_that_is_taken(at):
    office = Client()
    office.force_login(at.accounts["secretary"])
    Show.objects.update(slug="small-show")
    taken = office.post("/office/small-show/copy/", {"name": "Small Show", "first_day": NEXT + timedelta(days=1)})
    assert "There is a show of this name already." in taken.content.decode()
    made = office.post("/office/small-show/copy/", {"name": "Small Show 2027", "first_day": NEXT})
    assert made.url == "/office/small-show-2027/"
