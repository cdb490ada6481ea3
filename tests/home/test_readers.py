"""Whom an owner lets read reads the critiques of that dog, signed in, until it is taken back or the dog is sold."""

import html
import io

import pytest
from django.core import mail
from django.test import Client
from pypdf import PdfReader

from ringside.core.models import AuditLine
from ringside.dogs.models import Ownership
from ringside.entries.models import Consent
from ringside.home import readers
from ringside.home.forgetting import forget_contact, forget_old_contacts
from ringside.home.kept import kept_of
from ringside.home.models import Reader
from ringside.people.actions import person_for
from ringside.people.models import Account, Person
from ringside.results.models import Critique, Publication
from tests.home.published import published, told_by
from tests.photos.sending import kept_photo
from tests.shows_for_tests import FIRST_DAY

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]
BREEDER = "breeder@small.example"


@pytest.fixture
def shown():
    return published()


def let(shown, email: str = BREEDER, name: str = "ada", number: int = 1, kind: str = "breeder"):
    dog = shown.at.entries[number - 1].dog_id
    return shown.client(name).post(f"/my-dogs/{dog}/readers/", {"email": email, "kind": kind})


def signed_in(email: str = BREEDER) -> Client:
    client = Client()
    client.force_login(Account.objects.get(email=email))
    return client


def said(answer) -> str:
    return html.unescape(answer.content.decode())


def reads(shown, number: int = 1, client: Client | None = None) -> set[int]:
    """What page and paper of an entry answer to the breeder."""
    entry = shown.at.entries[number - 1].pk
    client = client or signed_in()
    return {client.get(f"/reading/{entry}/{rest}").status_code for rest in ("", "critique.pdf")}


def test_the_breeder_reads_the_critique_in_each_language_on_the_page_and_on_paper(shown):
    assert let(shown).status_code == 302
    breeder, entry = signed_in(), shown.at.entries[0].pk
    assert f"/reading/{entry}/" in said(breeder.get("/my-dogs/"))
    for language in ("en", "fr", "de", "es"):
        told = shown.critique(1, language).sentences[0]
        assert told in said(breeder.get(f"/reading/{entry}/?in={language}"))
        pdf = PdfReader(io.BytesIO(breeder.get(f"/reading/{entry}/critique.pdf?in={language}").content))
        assert told.split()[0] in pdf.pages[0].extract_text()


def test_the_breeder_reads_nothing_of_a_second_dog_of_the_same_show(shown):
    let(shown)
    assert reads(shown, 2) == {404}
    assert f"/reading/{shown.at.entries[1].pk}/" not in said(signed_in().get("/my-dogs/"))


def test_everything_else_of_the_dog_is_not_there_for_its_reader(shown):
    let(shown)
    breeder, entry, dog = signed_in(), shown.at.entries[0].pk, shown.at.entries[0].dog_id
    critique = shown.critique(1).pk
    photo = kept_photo(shown.at.accounts["ada"], shown.at.entries[0].dog, taken_on=FIRST_DAY.isoformat())
    for address in (
        f"/my-dogs/{dog}/", f"/my-dogs/entries/{entry}/correction/", f"/critiques/{critique}/",
        f"/papers/critiques/{critique}.pdf", f"/photos/dogs/{dog}/", f"/photos/{photo.public_id}/picture/",
    ):  # fmt: skip
        assert breeder.get(address).status_code == 404, address
    reader = Reader.objects.get().pk
    for address in (
        f"/critiques/{critique}/share/", f"/my-dogs/{dog}/readers/", f"/my-dogs/readers/{reader}/take-back/",
        f"/my-dogs/entries/{entry}/correction/",
    ):  # fmt: skip
        assert breeder.post(address, {"email": "x@small.example", "kind": "other"}).status_code == 404, address
    assert Reader.objects.count() == 1


def test_the_readers_page_shows_no_owner_no_address_no_photo_and_nothing_to_press(shown):
    kept_photo(shown.at.accounts["ada"], shown.at.entries[0].dog, taken_on=FIRST_DAY.isoformat())
    let(shown)
    page = signed_in().get(f"/reading/{shown.at.entries[0].pk}/").content.decode()
    main = page[page.index("<main") : page.index("</main>")]
    assert "ada" not in told_by(main)
    assert "@" not in main
    assert "<form" not in main
    assert "/photos/" not in main
    assert "/correction/" not in main


def test_nobody_else_reads_and_who_is_not_signed_in_is_asked_to(shown):
    let(shown)
    for name in ("ben", "cleo", "stranger", "secretary", "judge"):
        assert reads(shown, client=shown.client(name)) == {404}
    assert reads(shown, client=Client()) == {302}
    assert signed_in().get("/reading/999999/").status_code == 404


def test_taken_back_it_is_gone_at_once_and_may_be_given_again(shown):
    let(shown)
    reader = Reader.objects.get()
    assert shown.client("ada").post(f"/my-dogs/readers/{reader.pk}/take-back/").status_code == 302
    assert reads(shown) == {404}
    assert "/reading/" not in said(signed_in().get("/my-dogs/"))
    assert shown.client("ada").post(f"/my-dogs/readers/{reader.pk}/take-back/").status_code == 404
    let(shown)
    assert reads(shown) == {200}


def test_withdrawn_from_what_i_agreed_to_it_is_gone_too(shown):
    let(shown)
    consent, ada = Consent.objects.get(what="critiques-reader"), shown.client("ada")
    page = said(ada.get("/my-dogs/kept/"))
    assert BREEDER in page
    assert "Whoever signs in with the e-mail address given here" in page
    ada.post(f"/my-dogs/consents/{consent.pk}/withdraw/")
    assert reads(shown) == {404}
    assert Reader.objects.get().withdrawn_at is not None
    assert Consent.objects.get(pk=consent.pk).withdrawn_at is not None


def test_taking_it_back_withdraws_the_consent_and_both_are_on_record_without_the_address(shown):
    let(shown)
    shown.client("ada").post(f"/my-dogs/readers/{Reader.objects.get().pk}/take-back/")
    assert Consent.objects.get(what="critiques-reader").withdrawn_at is not None
    lines = AuditLine.objects.filter(doing__in=["let-read", "take-back-reading"]).order_by("id")
    assert [line.doing for line in lines] == ["let-read", "take-back-reading"]
    assert not any(BREEDER in f"{line.about} {line.detail}" for line in AuditLine.objects.all())


def test_once_the_dog_is_sold_the_reader_reads_nothing_and_the_new_owner_starts_without_readers(shown):
    let(shown)
    dog, ben = shown.at.entries[0].dog, Person.objects.get(name="ben")
    Ownership.objects.filter(dog=dog).update(person=ben)
    assert reads(shown) == {404}
    assert BREEDER not in said(shown.client("ben").get(f"/my-dogs/{dog.pk}/"))
    assert let(shown, name="ben").status_code == 302
    assert reads(shown) == {200}
    shown.client("ada").post(
        f"/my-dogs/consents/{Consent.objects.get(person__name='ada', what='critiques-reader').pk}/withdraw/"
    )
    assert reads(shown) == {200}


def test_each_owner_of_a_dog_sees_its_readers_and_takes_them_back(shown):
    let(shown)
    dog = shown.at.entries[0].dog
    Ownership.objects.create(dog=dog, person=Person.objects.get(name="ben"))
    ben = shown.client("ben")
    assert BREEDER in said(ben.get(f"/my-dogs/{dog.pk}/"))
    ben.post(f"/my-dogs/readers/{Reader.objects.get().pk}/take-back/")
    assert reads(shown) == {404}
    assert Consent.objects.get(what="critiques-reader").withdrawn_at is not None


@pytest.mark.parametrize("name", ["ben", "cleo", "stranger", "secretary", "judge"])
def test_who_gives_it_must_own_the_dog(shown, name):
    assert let(shown, name=name).status_code == 404
    let(shown)
    assert shown.client(name).post(f"/my-dogs/readers/{Reader.objects.get().pk}/take-back/").status_code == 404
    assert Reader.objects.filter(withdrawn_at=None).count() == 1
    assert not Account.objects.filter(email="other@small.example").exists()


@pytest.mark.parametrize(
    ("email", "told"),
    [
        ("", "required"),
        ("no address", "no address"),
        ("Ada@Small.Example", "This is your own address"),
        ("Breeder@small.example", "is in the list"),
        ("ben@small.example", "belongs to an owner of this dog"),
    ],
)
def test_an_address_that_cannot_be_is_refused_in_words_and_stays_typed(shown, email, told):
    Ownership.objects.create(dog=shown.at.entries[0].dog, person=Person.objects.get(name="ben"))
    let(shown)
    answer = let(shown, email=email, kind="other")
    assert answer.status_code in (400, 409)
    assert told in said(answer)
    assert f'value="{email}"' in said(answer) or not email
    assert '<option value="other" selected>' in said(answer)
    assert Reader.objects.count() == 1


def test_a_kind_that_is_none_is_refused(shown):
    assert let(shown, kind="judge").status_code == 400
    assert not Reader.objects.exists()


def test_a_dog_has_a_sensible_number_of_readers_and_an_owner_writes_to_a_sensible_number_a_day(shown, monkeypatch):
    for number in range(readers.MOST_READERS):
        assert let(shown, email=f"r{number}@small.example").status_code == 302
    assert "At most 10 people" in said(let(shown))
    # Taking back makes room, for as long as not too many were written to.
    monkeypatch.setattr(readers, "MOST_A_DAY", readers.MOST_READERS)
    shown.client("ada").post(f"/my-dogs/readers/{Reader.objects.earliest('id').pk}/take-back/")
    assert "go on tomorrow" in said(let(shown))
    assert Reader.objects.count() == readers.MOST_READERS


def test_the_person_is_told_by_e_mail_what_may_be_read_and_where_to_sign_in(shown, django_capture_on_commit_callbacks):
    with django_capture_on_commit_callbacks(execute=True):
        let(shown)
    (letter,) = mail.outbox
    dog = shown.at.entries[0].dog.name
    assert letter.to == [BREEDER]
    assert letter.subject == f"You may read the critiques of {dog}"
    assert f"ada lets you read the published critiques of {dog}" in letter.body
    assert "http://testserver/my-dogs/#to-read" in letter.body
    assert "{" not in letter.body


def test_the_letter_is_in_the_language_the_person_chose(shown, django_capture_on_commit_callbacks):
    Account.objects.create_user(BREEDER, language="fr")
    with django_capture_on_commit_callbacks(execute=True):
        let(shown)
    assert mail.outbox[0].subject.startswith("Vous pouvez lire les rapports")


def test_a_critique_that_is_taken_back_is_not_read_and_the_page_says_that_none_is_published(shown):
    let(shown)
    Publication.objects.all().delete()
    assert reads(shown) == {404}
    assert "No critique of this dog is published yet" in said(signed_in().get("/my-dogs/"))


def test_both_find_it_in_their_own_file_and_nothing_of_the_other_in_the_readers(shown):
    let(shown)
    told = kept_of(shown.at.accounts["ada"])
    assert [(one["email"], one["kind"], one["withdrawn_at"]) for one in told["readers"]] == [
        (BREEDER, "the breeder", None)
    ]
    assert told["reads"] == []
    other = kept_of(Account.objects.get(email=BREEDER))
    assert [one["dog"] for one in other["reads"]] == [shown.at.entries[0].dog.name]
    assert "ada" not in str(other)
    assert "which an owner lets you read" in said(signed_in().get("/my-dogs/kept/"))
    assert f"read by {BREEDER}" in said(shown.client("ada").get("/my-dogs/kept/"))


def test_when_the_owner_is_forgotten_the_reader_reads_nothing_and_no_address_stays(shown):
    let(shown)
    forget_contact(who=shown.at.accounts["ada"], typed="ada@small.example")
    assert reads(shown) == {404}
    assert not Reader.objects.exists()
    consent = Consent.objects.get(what="critiques-reader")
    assert (consent.text, consent.withdrawn_way) == ("", "forgotten")
    assert Critique.objects.filter(entry=shown.at.entries[0]).exists()


def test_when_the_reader_is_forgotten_no_address_stays_and_a_new_account_of_it_reads_nothing(shown):
    let(shown)
    forget_contact(who=Account.objects.get(email=BREEDER), typed=BREEDER)
    consent = Consent.objects.get(what="critiques-reader")
    assert (consent.text, consent.withdrawn_way) == ("", "forgotten")
    assert BREEDER not in said(shown.client("ada").get("/my-dogs/kept/"))
    person_for(name="Breeder", email=BREEDER)
    assert reads(shown) == {404}


def test_an_account_is_kept_for_its_time_from_the_day_it_was_let_read(shown):
    let(shown)
    given, account = Reader.objects.get().given_at, Account.objects.filter(email=BREEDER)
    account.update(joined_at="2000-01-01T00:00Z")
    forget_old_contacts(days=365, today=given.date())
    assert account.exists()
    forget_old_contacts(days=0, today=given.date().replace(year=given.year + 1))
    assert not account.exists()
    assert not Reader.objects.filter(email=BREEDER).exists()
