"""What a person agreed to is on record with its words, and nothing is printed or shared past a withdrawal."""

import importlib
import io

import pytest
from django.apps import apps
from django.db import IntegrityError, transaction
from django.http import Http404
from django.test import Client
from django.utils.formats import date_format
from django.utils.timezone import localtime
from pypdf import PdfReader

from ringside.core.denied import Denied, NotNow
from ringside.core.models import AuditLine
from ringside.dogs.models import Ownership
from ringside.entries.consents import actions, queries
from ringside.entries.consents.wording import UNKNOWN, WORDINGS, words_of
from ringside.entries.models import Consent
from ringside.home import consenting
from ringside.home.forgetting import forget_contact, forget_old_contacts
from ringside.home.kept import kept_of
from ringside.home.models import Share
from ringside.home.sharing import share_entry, withdraw_share
from ringside.papers.catalogue import catalogue_pdf
from ringside.papers.gathering import programme_of
from ringside.people.models import Person
from ringside.photos import actions as photos
from ringside.photos.models import Photo
from ringside.results.actions import publish_class
from ringside.results.models import Critique
from ringside.shows.models import Show
from tests.photos.sending import kept_photo
from tests.results.writing import Pen, judge_and_sign
from tests.shows_for_tests import FIRST_DAY, SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]
ADDRESS = "7 Mill Lane, 1234 Elsewhere"


@pytest.fixture
def at() -> SmallShow:
    found = small_show()
    found.show.entries_open = FIRST_DAY
    found.show.save()
    return found


def person(name: str = "ada") -> Person:
    return Person.objects.get(name=name)


def agree(at: SmallShow, name: str = "ada", address: str = ADDRESS, by: str = "", **more) -> Consent:
    told = {"for_office": bool(by), **more}
    return actions.agree_to_address(
        who=at.accounts[by or name], show=at.show, person=person(name), address=address, **told
    )


def catalogue(at: SmallShow) -> str:
    pages = PdfReader(io.BytesIO(catalogue_pdf(programme_of(at.show)))).pages
    return " ".join(" ".join(page.extract_text() for page in pages).split())


def test_an_address_is_printed_once_agreed_to_and_no_longer_once_withdrawn(at):
    assert ADDRESS not in catalogue(at)
    consent = agree(at)
    assert ADDRESS in catalogue(at)
    consenting.withdraw(who=at.accounts["ada"], consent=consent)
    assert ADDRESS not in catalogue(at)
    consent.refresh_from_db()
    assert (consent.way, consent.withdrawn_way, consent.text) == ("web", "web", ADDRESS)


def test_a_consent_says_who_to_which_words_when_and_by_which_way(at):
    consent = agree(at)
    assert (consent.person, consent.recorded_by, consent.wording) == (person(), at.accounts["ada"], 1)
    assert consent.given_at is not None
    assert "may print the address" in words_of(consent.what, consent.wording)
    line = AuditLine.objects.get(doing="give-consent")
    assert (line.about, line.detail) == (f"person:{person().pk}", {"kind": "catalogue-address"})


def test_every_wording_has_a_number_from_one_without_a_gap():
    for wordings in WORDINGS.values():
        assert sorted(wordings) == list(range(1, len(wordings) + 1))
        assert UNKNOWN not in wordings
    assert set(WORDINGS) == set(Consent.What.values)


def test_another_address_ends_the_one_before_and_the_same_again_changes_nothing(at):
    first = agree(at)
    assert agree(at, address="  7 Mill Lane,\n\n1234   Elsewhere ").pk == first.pk
    agree(at, address="9 Other Road")
    first.refresh_from_db()
    assert first.withdrawn_at is not None
    assert queries.addresses_of(at.show) == {"ada": "9 Other Road"}


def test_the_database_holds_one_address_in_force_for_a_person_and_a_show(at):
    agree(at)
    with pytest.raises(IntegrityError), transaction.atomic():
        Consent.objects.create(person=person(), what="catalogue-address", wording=1, show=at.show, way="web")


@pytest.mark.parametrize(("address", "words"), [("  \n ", "Write the address"), ("x" * 301, "at most 300")])
def test_what_is_no_address_is_refused(at, address, words):
    with pytest.raises(NotNow, match=words):
        agree(at, address=address)


def test_nobody_agrees_for_somebody_else_and_only_exhibitors_of_the_show_do(at):
    with pytest.raises(Denied, match="for somebody else"):
        actions.agree_to_address(
            who=at.accounts["ben"], show=at.show, person=person(), address=ADDRESS, for_office=False
        )
    at.other_entry.delete()
    at.entries[0].delete()
    with pytest.raises(NotNow, match="no dog entered"):
        agree(at)


def test_two_exhibitors_of_one_name_have_an_address_only_where_both_agreed_to_it(at):
    other = Person.objects.create(name="ada")
    Ownership.objects.create(dog=at.entries[1].dog, person=other)
    actions.agree_to_address(
        who=at.accounts["ada"], show=at.show, person=Person.objects.get(name="ada", account__isnull=False),
        address=ADDRESS, for_office=False,
    )  # fmt: skip
    assert queries.addresses_of(at.show) == {}


def test_the_office_records_a_paper_form_and_a_withdrawal(at):
    consent = agree(at, "ben", by="assistant")
    assert (consent.way, consent.recorded_by) == ("paper", at.accounts["assistant"])
    actions.withdraw_told(who=at.accounts["secretary"], consent=consent, for_office=True)
    assert Consent.objects.get().withdrawn_way == "paper"
    with pytest.raises(NotNow, match="withdrawn already"):
        actions.withdraw_told(who=at.accounts["secretary"], consent=consent, for_office=True)


@pytest.mark.parametrize("who", ["steward", "writer", "judge"])
def test_who_takes_no_entries_records_no_consent(at, who):
    with pytest.raises(Denied):
        agree(at, "ben", by=who)


def published(at: SmallShow) -> None:
    Pen(at).sign(f"entry:{at.entries[0].pk}")
    judge_and_sign(at)
    publish_class(by=at.accounts["secretary"], show_class=at.show_class)


def test_sharing_a_critique_is_a_consent_and_withdrawing_it_ends_the_link(at):
    published(at)
    share = share_entry(by=at.accounts["ada"], entry=at.entries[0])
    consent = Consent.objects.get()
    assert (share.consent, consent.what, consent.show, consent.dog) == (
        consent, "critique-link", at.show, at.entries[0].dog,
    )  # fmt: skip
    address = f"/shared/{share.token}/"
    assert Client().get(address).status_code == 200
    consenting.withdraw(who=at.accounts["ada"], consent=consent)
    assert Client().get(address).status_code == 404
    assert Consent.objects.get().withdrawn_at is not None


def test_ending_a_link_withdraws_its_consent(at):
    published(at)
    withdraw_share(by=at.accounts["ada"], share=share_entry(by=at.accounts["ada"], entry=at.entries[0]))
    assert Consent.objects.get().withdrawn_at is not None


def test_who_agreed_ends_the_link_even_where_the_dog_is_sold(at):
    published(at)
    share_entry(by=at.accounts["ada"], entry=at.entries[0])
    Ownership.objects.filter(dog=at.entries[0].dog).delete()
    consenting.withdraw(who=at.accounts["ada"], consent=Consent.objects.get())
    assert not Share.objects.filter(withdrawn_at=None).exists()


def test_sharing_a_photo_is_a_consent_that_ends_with_the_link_or_the_photo(at):
    ada = at.accounts["ada"]
    photo = kept_photo(ada, at.entries[0].dog, taken_on=FIRST_DAY.isoformat())
    photos.share_photo(by=ada, photo=photo)
    assert photo.consent.what == "photo-link"
    consenting.withdraw(who=ada, consent=photo.consent)
    assert Photo.objects.filter(pk=photo.pk, share_token=None, consent=None).exists()
    photo.refresh_from_db()
    photos.share_photo(by=ada, photo=photo)
    photos.delete_photo(by=ada, photo=photo)
    assert not Consent.objects.filter(withdrawn_at=None).exists()


def signed_in(at: SmallShow, who: str) -> Client:
    client = Client()
    client.force_login(at.accounts[who])
    return client


def test_the_exhibitor_agrees_on_a_page_sees_it_among_own_data_and_withdraws_there(at):
    client = signed_in(at, "ada")
    page = client.get("/enter/small/catalogue-address/").content.decode()
    assert "Not printed." in page
    assert WORDINGS["catalogue-address"][1] in page
    told = {"person": person().pk, "address": ADDRESS}
    assert client.post("/enter/small/catalogue-address/", told).status_code == 302
    assert ADDRESS in client.get("/enter/small/catalogue-address/").content.decode()
    kept = client.get("/my-dogs/kept/").content.decode()
    assert ADDRESS in kept
    assert "on the web" in kept
    assert client.post(f"/my-dogs/consents/{Consent.objects.get().pk}/withdraw/").status_code == 302
    withdrawn_on = date_format(localtime(Consent.objects.get().withdrawn_at))
    assert f"Withdrawn {withdrawn_on}, on the web." in client.get("/my-dogs/kept/").content.decode()
    assert "Not printed." in client.get("/enter/small/catalogue-address/").content.decode()


def test_an_address_refused_stays_as_it_was_typed(at):
    answer = signed_in(at, "ada").post("/enter/small/catalogue-address/", {"person": person().pk, "address": "y" * 301})
    assert answer.status_code == 400
    assert "y" * 301 in answer.content.decode()
    assert not Consent.objects.exists()


def test_a_name_of_somebody_else_is_not_found(at):
    told = {"person": person("ben").pk, "address": ADDRESS}
    assert signed_in(at, "ada").post("/enter/small/catalogue-address/", told).status_code == 404


def test_nobody_withdraws_what_another_agreed_to(at):
    consent = agree(at)
    with pytest.raises(Http404):
        consenting.access_own_consent(at.accounts["ben"], consent.pk)
    assert signed_in(at, "ben").post(f"/my-dogs/consents/{consent.pk}/withdraw/").status_code == 404


def test_the_secretary_sees_who_agreed_to_what_and_records_paper(at):
    client, entry = signed_in(at, "secretary"), at.entries[0]
    address = f"/office/small/entries/{entry.pk}/"
    assert "the catalogue prints no address" in client.get(address).content.decode()
    told = {"person": person().pk, "address": ADDRESS}
    refused = client.post(f"{address}consents/", told)
    assert refused.status_code == 400
    assert ADDRESS in refused.content.decode()
    assert client.post(f"{address}consents/", {**told, "is_signed": "on"}).status_code == 302
    page = client.get(address).content.decode()
    assert "on a paper form, recorded by the office" in page
    assert "secretary@small.example" in page
    consent = Consent.objects.get()
    assert client.post(f"/office/small/entries/{entry.pk}/consents/{consent.pk}/end/").status_code == 302
    assert queries.addresses_of(at.show) == {}


def test_a_consent_of_another_entrys_owner_is_not_found_in_the_office(at):
    consent = agree(at)
    address = f"/office/small/entries/{at.entries[1].pk}/consents/{consent.pk}/end/"
    assert signed_in(at, "secretary").post(address).status_code == 404


def test_forgetting_withdraws_all_and_takes_the_address_away(at):
    agree(at)
    assert [one["text"] for one in kept_of(at.accounts["ada"])["consents"]] == [ADDRESS]
    forget_contact(who=at.accounts["ada"], typed="ada@small.example")
    consent = Consent.objects.get()
    assert (consent.text, consent.withdrawn_way, consent.person.name) == ("", "forgotten", "ada")
    assert ADDRESS not in catalogue(at)


def test_forgetting_ends_the_link_to_a_photo_that_somebody_else_sent(at):
    ada = at.accounts["ada"]
    photo = kept_photo(ada, at.entries[0].dog, taken_on=FIRST_DAY.isoformat())
    Photo.objects.update(uploaded_by=None)  # as a paired tablet's
    photo.refresh_from_db()
    address = f"/photos/shared/{photos.share_photo(by=ada, photo=photo)}/"
    assert Client().get(address).status_code == 200
    forget_contact(who=ada, typed="ada@small.example")
    assert Client().get(address).status_code == 404
    assert Photo.objects.filter(pk=photo.pk, share_token=None, consent=None).exists()


def test_addresses_of_shows_long_over_go_also_without_an_account(at):
    agree(at, "ben", by="secretary")
    forget_old_contacts(days=365, today=FIRST_DAY.replace(year=2030))
    assert Consent.objects.get().text == ""


def test_links_from_before_become_consents_that_say_so(at):
    published(at)
    ada, entry = at.accounts["ada"], at.entries[0]
    share_entry(by=ada, entry=entry)
    photos.share_photo(by=ada, photo=kept_photo(ada, entry.dog, taken_on=FIRST_DAY.isoformat()))
    Consent.objects.all().delete()
    assert not Share.objects.exclude(consent=None).exists()
    importlib.import_module("ringside.home.migrations.0002_consents").keep_consents(apps, None)
    told = {one.what: one for one in Consent.objects.all()}
    assert {one.way for one in told.values()} == {"before"}
    assert {one.wording for one in told.values()} == {UNKNOWN}
    assert told["critique-link"].given_at == Share.objects.get().made_at
    assert told["photo-link"].given_at is None
    assert (Share.objects.get().consent, Photo.objects.get().consent) == (told["critique-link"], told["photo-link"])
    assert "The words were not kept." in signed_in(at, "ada").get("/my-dogs/kept/").content.decode()


def everybody_reads(at: SmallShow, number: int = 1) -> bool:
    critique = Critique.objects.get(entry__number=number, language="en")
    is_read = Client().get(f"/critiques/{critique.pk}/").status_code == 200
    assert (f"/critiques/{critique.pk}/" in Client().get("/results/small/").content.decode()) == is_read
    return is_read


def test_an_owner_keeps_critiques_from_everybody_where_the_show_makes_them_public(at):
    published(at)
    Show.objects.update(critiques_public=True)
    assert everybody_reads(at)
    client, address = signed_in(at, "ada"), "/enter/small/catalogue-address/"
    assert "You have not said anything about yours" in client.get(address).content.decode()
    client.post(address, {"critiques": "no"})
    assert not everybody_reads(at)
    assert client.get(f"/critiques/{Critique.objects.get(language='en').pk}/").status_code == 200
    assert "Not for everybody" in client.get(address).content.decode()
    client.post(address, {"critiques": "yes"})
    assert everybody_reads(at)
    consent = Consent.objects.get(what="critiques-public", withdrawn_at=None)
    consenting.withdraw(who=at.accounts["ada"], consent=consent)
    assert not everybody_reads(at)
    assert [one.given_at is None for one in Consent.objects.order_by("id")] == [True, False]


def test_saying_the_same_twice_is_kept_once(at):
    for _ in range(2):
        actions.settle_critiques(who=at.accounts["ada"], show=at.show, allowed=True)
    assert Consent.objects.count() == 1
    with pytest.raises(NotNow, match="No dog of yours"):
        actions.settle_critiques(who=at.accounts["stranger"], show=at.show, allowed=True)


def test_a_show_that_keeps_critiques_to_owners_asks_nobody(at):
    client, address = signed_in(at, "ada"), "/enter/small/catalogue-address/"
    assert "Critiques of my dogs" not in client.get(address).content.decode()
    assert client.post(address, {"critiques": "yes"}).status_code == 404
    assert not Consent.objects.exists()
