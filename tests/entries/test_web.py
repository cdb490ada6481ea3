"""Exhibitors enter on the web: own dogs only, classes the rules allow, changed until entries close."""

from datetime import date, timedelta

import pytest
from django.http import Http404
from django.test import Client
from django.utils import timezone

from ringside.core.denied import Denied, NotNow
from ringside.core.models import AuditLine
from ringside.dogs.models import Dog
from ringside.entries import by_hand, waiting
from ringside.entries.models import Entry, EntryRequest
from ringside.entries.numbering import number_entries
from ringside.entries.own import access_own_dog
from ringside.entries.web import actions, queries
from ringside.entries.web.offers import offers_for, wanted_of
from ringside.entries.web.opening import Standing, standing_of
from ringside.people.models import Account
from ringside.shows.models import Role, Show
from tests.shows_for_tests import SmallShow

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]

OPENS, CLOSES, TODAY, LATE = date(2026, 4, 1), date(2026, 5, 17), date(2026, 5, 1), date(2026, 5, 18)


def texts(**more: str) -> dict[str, str]:
    return {
        "name": "Heath of Dale", "breed": "boxer", "sex": "dog", "born": "2022-02-01", "chip": "999000000710001",
        "studbook": "T7/22", "sire": "Sol", "dam": "Luna", "breeder": "Dora", "owner": "Dora Dale",
        "email": "dora@small.example", "titles": "", "certificates": "", "neutered": "no", "call_name": "",
        "variety": "", **more,
    }  # fmt: skip


def own_dog(at: SmallShow, who: Account, **more: str) -> Dog:
    return actions.keep_dog(who=who, show=at.show, texts=texts(**more), today=TODAY)


def choose(at: SmallShow, who: Account, dog: Dog, *classes: str, today: date = TODAY):
    return actions.choose_classes(who=who, show=at.show, dog=dog, classes=classes, today=today)


def entered(at: SmallShow, dog: Dog) -> list[str]:
    found = Entry.objects.filter(show=at.show, dog=dog, state="entered")
    return sorted(found.values_list("show_class__code", flat=True))


def page(who: Account) -> Client:
    client = Client()
    client.force_login(who)
    return client


@pytest.mark.parametrize(
    ("today", "standing"),
    [
        (date(2026, 3, 31), Standing.NOT_YET),
        (OPENS, Standing.OPEN),
        (CLOSES, Standing.OPEN),
        (LATE, Standing.LATE),
        (date(2026, 6, 12), Standing.LATE),
        (date(2026, 6, 13), Standing.OVER),
    ],
)
def test_a_show_is_open_from_its_first_to_its_last_day_of_entries(at, today, standing):
    assert standing_of(at.show, today) is standing


def test_a_dog_is_kept_once_and_entered(at, dora):
    dog = own_dog(at, dora)
    choose(at, dora, dog, "open")
    assert entered(at, dog) == ["open"]
    assert list(queries.dogs_of(dora, at.show)[0].entries) == list(Entry.objects.filter(dog=dog))
    assert AuditLine.objects.filter(doing="enter-own-dog", about=f"dog:{dog.pk}").exists()


def test_only_the_classes_that_the_rules_allow_are_open_with_the_age_counted(at, dora):
    # Source: the federation's class list as published by a member: open from 15 months on the day of the show.
    dog = own_dog(at, dora, born="2025-03-14")
    facts = queries.facts_of(at.show, TODAY)
    offers = {one.code: one for one in offers_for(wanted_of(dog), at.show, facts)}
    assert {code for code, one in offers.items() if one.is_open} == {"junior"}
    assert any("14 months old on 13 June 2026" in words for words in offers["open"].said)


def test_a_class_that_is_not_open_is_refused_in_words(at, dora):
    dog = own_dog(at, dora)
    with pytest.raises(NotNow, match="Too old for this class"):
        choose(at, dora, dog, "junior")
    with pytest.raises(NotNow, match="confirmed title"):
        choose(at, dora, dog, "champion")
    assert entered(at, dog) == []


def test_where_one_class_is_allowed_two_are_refused_and_another_one_replaces_it(at, dora):
    dog = own_dog(at, dora, certificates="WCC")
    with pytest.raises(NotNow, match="These rules let a dog stand in 1"):
        choose(at, dora, dog, "open", "working")
    choose(at, dora, dog, "open")
    first = Entry.objects.get(dog=dog)
    choose(at, dora, dog, "working")
    assert entered(at, dog) == ["working"]
    assert Entry.objects.get(dog=dog).pk == first.pk


def test_where_several_classes_are_allowed_several_may_be_chosen(at, dora):
    Show.objects.filter(pk=at.show.pk).update(rules="united-kingdom")
    at.show.refresh_from_db()
    dog = own_dog(at, dora)
    choose(at, dora, dog, "limit", "open")
    assert entered(at, dog) == ["limit", "open"]
    choose(at, dora, dog, "open")
    assert entered(at, dog) == ["open"]


def test_a_breed_that_no_judge_of_the_show_judges_is_refused(at, dora):
    dog = own_dog(at, dora, breed="leonberger", variety="")
    with pytest.raises(NotNow, match="no judge for the Leonberger"):
        choose(at, dora, dog, "open")


def test_withdrawing_is_free_until_closing_and_can_be_taken_back(at, dora):
    dog = own_dog(at, dora)
    choose(at, dora, dog, "open")
    actions.withdraw(who=dora, show=at.show, dog=dog, today=CLOSES)
    assert entered(at, dog) == []
    choose(at, dora, dog, "open", today=CLOSES)
    assert entered(at, dog) == ["open"]
    with pytest.raises(NotNow, match="ask the show's office"):
        actions.withdraw(who=dora, show=at.show, dog=dog, today=LATE)


def test_a_number_fixes_the_entry_and_its_facts(at, dora):
    dog = own_dog(at, dora)
    choose(at, dora, dog, "open")
    number_entries(who=at.accounts["secretary"], show=at.show)
    for again in (
        lambda: choose(at, dora, dog, "open"),
        lambda: actions.withdraw(who=dora, show=at.show, dog=dog, today=TODAY),
        lambda: actions.keep_dog(who=dora, show=at.show, texts=texts(born="2022-02-02"), today=TODAY, dog=dog),
    ):
        with pytest.raises(NotNow):
            again()
    changed = actions.keep_dog(who=dora, show=at.show, texts=texts(call_name="Tam"), today=TODAY, dog=dog)
    assert changed.call_name == "Tam"


def test_titles_are_kept_as_ticked(at, dora):
    dog = own_dog(at, dora, titles="national-champion")
    choose(at, dora, dog, "champion")
    actions.keep_dog(who=dora, show=at.show, texts=texts(), today=TODAY, dog=dog)
    assert not dog.titles.exists()


def test_a_late_entry_waits_and_gets_no_number_until_it_is_accepted(at, dora):
    dog = own_dog(at, dora)
    request = choose(at, dora, dog, "open", today=LATE)
    assert isinstance(request, EntryRequest)
    assert entered(at, dog) == []
    with pytest.raises(NotNow):
        number_entries(who=at.accounts["secretary"], show=at.show)
    waiting.accept(who=at.accounts["secretary"], request=request, reason="Post was late.", today=LATE)
    assert entered(at, dog) == ["open"]
    number_entries(who=at.accounts["secretary"], show=at.show)
    assert Entry.objects.get(dog=dog).number == 5
    request.refresh_from_db()
    assert (request.state, request.reason, request.decided_by) == (
        "accepted",
        "Post was late.",
        at.accounts["secretary"],
    )


def test_an_accepted_entry_was_entered_on_the_day_on_which_it_was_sent(at, dora):
    """By that day its fee goes; how long the office let it wait is not the exhibitor's fault."""
    dog = own_dog(at, dora)
    request = choose(at, dora, dog, "open", today=LATE)
    sent = timezone.now() - timedelta(days=9)
    EntryRequest.objects.filter(pk=request.pk).update(asked_at=sent)
    waiting.accept(who=at.accounts["secretary"], request=request, reason="Post was late.", today=LATE)
    assert Entry.objects.get(dog=dog).entered_at == sent


def test_a_refusal_keeps_its_reason_and_its_audit_line_and_its_sender_reads_it(at, dora):
    dog = own_dog(at, dora)
    request = choose(at, dora, dog, "open", today=LATE)
    with pytest.raises(NotNow, match="Write down the reason"):
        waiting.refuse(who=at.accounts["secretary"], request=request, reason=" ")
    waiting.refuse(who=at.accounts["secretary"], request=request, reason="The catalogue is printed.")
    assert AuditLine.objects.filter(doing="entry-refused", about=f"request:{request.pk}").exists()
    with pytest.raises(NotNow, match="refused already"):
        waiting.accept(who=at.accounts["secretary"], request=request, reason="Still.", today=LATE)
    assert "The catalogue is printed." in page(dora).get(f"/enter/small/dogs/{dog.pk}/").content.decode()


@pytest.mark.parametrize("role", ["assistant", "steward", "judge"])
def test_only_the_secretary_decides(at, dora, role):
    request = choose(at, dora, own_dog(at, dora), "open", today=LATE)
    with pytest.raises(Denied):
        waiting.accept(who=at.accounts[role], request=request, reason="Yes.", today=LATE)


def test_a_dog_of_another_owner_is_not_taken_over_and_nothing_of_it_is_told(at, dora):
    Dog.objects.filter(pk=at.entries[0].dog_id).update(chip="999000000710001", studbook="SECRET/1", sire="Hidden")
    [finding] = queries.same_dogs(queries.check_dog(at.show, texts(name="Dog 1"), TODAY).values, dora)
    assert finding.code == "dog-under-another-owner"
    with pytest.raises(NotNow):
        own_dog(at, dora, name="Dog 1")
    form = {**texts(name="Dog 1"), "titles": [], "certificates": [], "neutered": ""}
    answer = page(dora).post("/enter/small/dogs/new/", form).content.decode()
    assert "SECRET" not in answer
    assert "Hidden" not in answer
    assert not Dog.objects.filter(owners__account=dora).exists()


def test_a_dog_under_another_owner_waits_and_accepting_makes_the_asker_an_owner_too(at, dora):
    dog = at.other_entry.dog
    Dog.objects.filter(pk=dog.pk).update(chip="999000000710001")
    Entry.objects.filter(dog=dog).delete()
    told = texts(name=dog.name, breed="hovawart", born=dog.born.isoformat())
    request = actions.ask_for_dog(who=dora, show=at.show, texts=told, classes=["open"], today=TODAY)
    with pytest.raises(Http404):
        access_own_dog(dora, dog.pk)
    waiting.accept(who=at.accounts["secretary"], request=request, reason="Both own it.", today=TODAY)
    assert entered(at, dog) == ["open"]
    assert access_own_dog(dora, dog.pk) == dog


def test_a_second_entry_of_a_dog_that_is_entered_cannot_be_accepted(at, dora):
    dog = at.entries[0].dog
    told = texts(name=dog.name, born=dog.born.isoformat(), chip="999000000710001")
    request = actions.ask_for_dog(who=dora, show=at.show, texts=told, classes=["open"], today=TODAY)
    with pytest.raises(NotNow, match="entered in this show already"):
        waiting.accept(who=at.accounts["secretary"], request=request, reason="Yes.", today=TODAY)
    assert EntryRequest.objects.get().state == "waiting"


def test_an_exhibitor_reaches_no_dog_and_no_waiting_entry_of_another(at, dora):
    dog = own_dog(at, dora)
    request = choose(at, dora, dog, "open", today=LATE)
    ben = page(at.accounts["ben"])
    assert ben.get(f"/enter/small/dogs/{dog.pk}/").status_code == 404
    assert ben.get(f"/enter/small/dogs/{dog.pk}/facts/").status_code == 404
    assert ben.post(f"/enter/small/dogs/{dog.pk}/withdraw/").status_code == 404
    assert ben.post(f"/enter/small/waiting/{request.pk}/take-back/").status_code == 404
    assert EntryRequest.objects.get().state == "waiting"
    with pytest.raises(Denied):
        choose(at, at.accounts["ben"], dog, "open")


def test_all_findings_are_said_at_once_beside_their_fields_and_nothing_typed_is_lost(at, dora):
    form = {**texts(name="", sex="", born="2027-01-01", chip="12", call_name="Kept"), "titles": [], "certificates": []}
    answer = page(dora).post("/enter/small/dogs/new/", form)
    words = answer.content.decode()
    assert answer.status_code == 400
    for code in ("The dog&#x27;s name is missing.", "The sex is missing.", "has 2 digits instead of 15"):
        assert words.count(code) == 2
    assert 'value="Kept"' in words


def test_a_show_that_is_only_being_set_up_is_nobodys_business(at):
    Show.objects.update(entries_open=None)
    assert Client().get("/enter/small/").status_code == 404
    assert "Small Show" not in Client().get("/enter/").content.decode()


def test_an_address_without_an_account_can_sign_in_to_enter(at):
    answer = Client().post("/enter/small/address/", {"email": "New@Small.example "})
    assert "Send the code to new@small.example" in answer.content.decode()
    assert Account.objects.filter(email="new@small.example").exists()
    wrong = Client().post("/enter/small/address/", {"email": "new"})
    assert wrong.status_code == 400


def by_the_office(at: SmallShow, **more: str) -> dict[str, str]:
    return {
        "name": "Typed of Heath", "breed": "Boxer", "sex": "dog", "born": "01.02.2022", "chip": "999000000700077",
        "owner": "Odo", "email": "odo@small.example", "class": "open", **more,
    }  # fmt: skip


def test_the_office_enters_a_dog_in_several_classes_where_the_rules_allow_it(at):
    secretary = at.accounts["secretary"]
    told = by_the_office(at, **{"class": "limit, open"})
    with pytest.raises(NotNow):
        by_hand.enter_each(who=secretary, show=at.show, texts=told, today=TODAY)
    Show.objects.filter(pk=at.show.pk).update(rules="united-kingdom")
    at.show.refresh_from_db()
    assert len(by_hand.enter_each(who=secretary, show=at.show, texts=told, today=TODAY)) == 2
    assert entered(at, Dog.objects.get(name="Typed of Heath")) == ["limit", "open"]
    again = by_hand.check_each(at.show, by_the_office(at, **{"class": "open"}), TODAY)
    assert "already-entered" in [one.code for one in by_hand.findings_of(again)]


def test_the_office_finds_a_dog_on_record_of_its_own_shows_and_no_others(at):
    other = Show.objects.create(slug="other", name="Other", first_day=CLOSES, last_day=CLOSES)
    Role.objects.create(show=other, account=at.accounts["stranger"], kind="secretary")
    secretary = page(at.accounts["secretary"])
    dog = at.entries[0].dog
    assert f"?dog={dog.pk}" in secretary.get("/office/small/entries/new/?q=dog+1").content.decode()
    assert 'value="Dog 1"' in secretary.get(f"/office/small/entries/new/?dog={dog.pk}").content.decode()
    stranger = page(at.accounts["stranger"])
    assert f"?dog={dog.pk}" not in stranger.get("/office/other/entries/new/?q=dog+1").content.decode()
    assert "Dog 1" not in stranger.get(f"/office/other/entries/new/?dog={dog.pk}").content.decode()


def test_a_dogs_breed_is_named_in_the_readers_language_and_never_by_its_code(at, dora):
    own_dog(at, dora, breed="german-shepherd-dog", variety="double-coat")
    own = Client(headers={"accept-language": "de"})
    own.force_login(dora)
    assert "Deutscher Schäferhund" in own.get("/enter/small/dogs/").content.decode()
    Dog.objects.filter(pk=at.entries[0].dog_id).update(breed="german-shepherd-dog")
    office = page(at.accounts["secretary"])
    assert "German Shepherd Dog, dog, born" in office.get("/office/small/entries/new/?q=dog+1").content.decode()


def test_what_the_office_types_is_named_beside_its_field_or_put_aside_with_the_reason(at):
    secretary = page(at.accounts["secretary"])
    told = by_the_office(at, owner="", sex="?")
    words = secretary.post("/office/small/entries/new/", told).content.decode()
    assert words.count("The owner is missing.") == 2
    assert words.count("The sex “?” cannot be read") == 2
    told |= {"wait": "yes", "why": "Came twice, on paper and by letter."}
    assert secretary.post("/office/small/entries/new/", told).status_code == 302
    request = EntryRequest.objects.get()
    assert "Came twice" in secretary.get("/office/small/entries/waiting/").content.decode()
    with pytest.raises(NotNow, match="The owner is missing"):
        waiting.accept(who=at.accounts["secretary"], request=request, reason="Yes.", today=TODAY)
    EntryRequest.objects.update(texts=by_the_office(at))
    waiting.accept(who=at.accounts["secretary"], request=request, reason="One of two.", today=TODAY)
    assert entered(at, Dog.objects.get(name="Typed of Heath")) == ["open"]


def test_a_withdrawn_dog_can_be_entered_again_by_the_office(at):
    secretary = at.accounts["secretary"]
    [entry] = by_hand.enter_each(who=secretary, show=at.show, texts=by_the_office(at), today=TODAY)
    Entry.objects.filter(pk=entry.pk).update(state="withdrawn")
    [again] = by_hand.enter_each(who=secretary, show=at.show, texts=by_the_office(at), today=TODAY)
    assert again.pk == entry.pk
    assert entered(at, entry.dog) == ["open"]


def test_an_own_dog_that_was_never_entered_can_be_deleted(at, dora):
    dog = own_dog(at, dora)
    choose(at, dora, dog, "open")
    with pytest.raises(NotNow, match="was entered"):
        actions.forget_dog(who=dora, dog=dog)
    Entry.objects.filter(dog=dog).delete()
    with pytest.raises(Denied):
        actions.forget_dog(who=at.accounts["ben"], dog=dog)
    actions.forget_dog(who=dora, dog=dog)
    assert not Dog.objects.filter(name="Heath of Dale").exists()


@pytest.mark.parametrize(
    ("language", "words"),
    [("", "is not entered"), ("fr", "n'est pas engagé"), ("de", "ist nicht gemeldet"), ("es", "no está inscrito")],
)
def test_the_sender_is_written_to_in_their_language(
    at, dora, mailoutbox, django_capture_on_commit_callbacks, language, words
):
    Account.objects.filter(pk=dora.pk).update(language=language)
    request = choose(at, dora, own_dog(at, dora), "open", today=LATE)
    with django_capture_on_commit_callbacks(execute=True):
        waiting.refuse(who=at.accounts["secretary"], request=request, reason="Printed.", where="https://x.example/")
    [letter] = mailoutbox
    assert words in letter.subject
    assert letter.to == ["dora@small.example"]
    assert "Printed." in letter.body
    assert "https://x.example/" in letter.body
