"""A photo is kept once under its device's id, read by whom it concerns, shared and withdrawn by its owner."""

import hashlib
import json
import uuid

import pytest
from django.core.files.storage import default_storage

from ringside.core.models import AuditLine
from ringside.photos.intake import MOST_BYTES
from ringside.photos.measured import ASSUMED_SD_OF_WIDTH
from ringside.photos.models import Photo, Steadiness
from ringside.ring.models import Sheet
from tests.photos.pictures import opened, picture
from tests.photos.sending import HEIGHT, LANDMARKS, WIDTH, kept_photo, send, signed_in, told
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def at() -> SmallShow:
    return small_show()


@pytest.fixture
def ada(at):
    """The owner of the first dog."""
    return at.accounts["ada"]


@pytest.fixture
def dog(at):
    return at.entries[0].dog


def test_a_photo_is_kept_measured_and_named_by_us(ada, dog):
    photo = kept_photo(ada, dog)
    assert (photo.width, photo.height, photo.file.name) == (WIDTH, HEIGHT, f"photos/{photo.public_id}.jpg")
    values = {one["code"]: one["value"] for one in photo.measured["measurements"]}
    # The worked example of this project's figures: front angle of the example dog, in degrees.
    assert values["front-angle"] == pytest.approx(92.527183, abs=1e-6)
    assert AuditLine.objects.filter(doing="mark-photo", about=f"photo:{photo.public_id}").exists()


def test_sending_the_same_photo_again_keeps_it_once_and_takes_the_newer_marks(ada, dog):
    client, public_id = signed_in(ada), uuid.uuid4()
    send(client, dog, public_id, told(), picture(size=(WIDTH, HEIGHT)))
    moved = {**LANDMARKS, "hock": [300, 560]}
    answer = send(client, dog, public_id, told(landmarks=moved))
    assert answer.status_code == 200
    photo = Photo.objects.get()
    assert photo.landmarks["hock"] == [300, 560]


def test_the_answer_names_the_photo_and_the_digest_of_what_was_told(ada, dog):
    public_id, words = uuid.uuid4(), told()
    answer = send(signed_in(ada), dog, public_id, words, picture(size=(WIDTH, HEIGHT))).json()
    digest = hashlib.sha256(json.dumps(words).encode()).hexdigest()
    assert answer == {"id": str(public_id), "digest": digest, "address": f"/photos/{public_id}/"}


def test_a_photo_taken_on_the_day_of_the_show_belongs_to_the_entry(at, ada, dog):
    day = at.show.first_day
    assert kept_photo(ada, dog, taken_on="2026-05-02").entry is None
    assert kept_photo(ada, dog, taken_on=day.isoformat()).entry == at.entries[0]


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        ("not an object", "were not understood"),
        (told(view="from-above"), "were not understood"),
        (told(landmarks={"withers": ["a", 1]}), "were not understood"),
        (told(landmarks={"horn": [1, 1]}), "were not understood"),
        (told(again={"withers": [1]}), "were not understood"),
        (told(taken_on="2090-01-01"), "future"),
        (told(taken_on=5), "were not understood"),
        (told(withers_height_cm=3), "from 10 to 120"),
        (told(image=[10, 10]), "another size"),
        (told(landmarks={"withers": [float("nan"), 1]}), "were not understood"),
    ],
)
def test_what_is_told_wrongly_is_refused_with_a_sentence(ada, dog, words, sentence):
    answer = send(signed_in(ada), dog, uuid.uuid4(), words, picture(size=(WIDTH, HEIGHT)))
    assert answer.status_code == 422
    assert sentence in answer.json()["error"]
    assert not Photo.objects.exists()


def test_a_hostile_file_is_refused_with_a_sentence(ada, dog):
    answer = send(signed_in(ada), dog, uuid.uuid4(), told(), b"<?php evil(); ?>")
    assert (answer.status_code, "no photo" in answer.json()["error"]) == (422, True)
    answer = send(signed_in(ada), dog, uuid.uuid4(), told(), bytes(MOST_BYTES + 70_000))
    assert (answer.status_code, "12 megabytes" in answer.json()["error"]) == (413, True)
    assert not Photo.objects.exists()


def test_the_picture_is_served_as_a_picture_only(ada, dog):
    photo = kept_photo(ada, dog)
    answer = signed_in(ada).get(f"/photos/{photo.public_id}/picture/")
    assert answer["Content-Type"] == "image/jpeg"
    assert answer["X-Content-Type-Options"] == "nosniff"
    assert opened(b"".join(answer.streaming_content)).size == (WIDTH, HEIGHT)


PAGES = ("/photos/{photo}/", "/photos/{photo}/picture/", "/photos/dogs/{dog}/", "/photos/dogs/{dog}/over-time/")
MAY_READ = {"ada", "secretary", "assistant"}


@pytest.mark.parametrize("address", PAGES)
def test_owner_and_office_read_and_nobody_else_finds_anything(at, ada, dog, address):
    photo = kept_photo(ada, dog)
    address = address.format(photo=photo.public_id, dog=dog.pk)
    for name, account in at.accounts.items():
        expected = 200 if name in MAY_READ else 404
        assert signed_in(account).get(address).status_code == expected, name
    assert signed_in(None).get(address).status_code == 302


@pytest.mark.parametrize("doing", ["delete", "share", "withdraw"])
def test_only_an_owner_changes(at, ada, dog, doing):
    photo = kept_photo(ada, dog)
    address = f"/photos/{photo.public_id}/{doing}/"
    for name, account in at.accounts.items():
        if name != "ada":
            assert signed_in(account).post(address).status_code == 404, name
    assert signed_in(ada).get(address).status_code == 405
    assert Photo.objects.filter(pk=photo.pk, share_token=None).exists()
    assert signed_in(ada).post(address).status_code == 302


@pytest.mark.parametrize("name", ["secretary", "judge", "ben", "stranger"])
def test_only_an_owner_sends(at, dog, name):
    answer = send(signed_in(at.accounts[name]), dog, uuid.uuid4(), told(), picture(size=(WIDTH, HEIGHT)))
    assert answer.status_code == 404


def test_who_is_signed_out_is_asked_to_sign_in_and_loses_nothing(dog):
    answer = send(signed_in(None), dog, uuid.uuid4(), told(), picture(size=(WIDTH, HEIGHT)))
    assert (answer.status_code, "kept on this device" in answer.json()["error"]) == (401, True)


def test_nobody_takes_over_the_id_of_anothers_photo(at, ada, dog):
    photo = kept_photo(ada, dog)
    bens = at.entries[1].dog
    answer = send(signed_in(at.accounts["ben"]), bens, photo.public_id, told(), picture(size=(WIDTH, HEIGHT)))
    assert answer.status_code == 403
    photo.refresh_from_db()
    assert photo.dog == dog


def test_the_judge_reads_nothing_before_the_breed_is_finished_then_a_number_and_no_name(at, ada, dog):
    photo = kept_photo(ada, dog)
    assert signed_in(at.accounts["judge"]).get(f"/photos/{photo.public_id}/").status_code == 404
    breed = at.show_class.show_breed
    Sheet.objects.create(key=f"breed:{breed.pk}", ring=at.ring, show_breed=breed, fields={}, signed={})
    assert signed_in(at.accounts["other-judge"]).get(f"/photos/{photo.public_id}/").status_code == 404
    for address in (f"/photos/{photo.public_id}/", f"/photos/dogs/{dog.pk}/"):
        page = signed_in(at.accounts["judge"]).get(address).content.decode()
        assert "Number 1" in page
        assert dog.name not in page


def test_a_shared_reading_is_read_by_anybody_until_it_is_withdrawn(ada, dog):
    photo = kept_photo(ada, dog)
    signed_in(ada).post(f"/photos/{photo.public_id}/share/")
    photo.refresh_from_db()
    token = photo.share_token
    signed_in(ada).post(f"/photos/{photo.public_id}/share/")
    assert Photo.objects.get().share_token == token
    for address in (f"/photos/shared/{token}/", f"/photos/shared/{token}/picture/"):
        answer = signed_in(None).get(address)
        assert (answer.status_code, answer["X-Robots-Tag"]) == (200, "noindex, nofollow")
    signed_in(ada).post(f"/photos/{photo.public_id}/withdraw/")
    assert signed_in(None).get(f"/photos/shared/{token}/").status_code == 404
    signed_in(ada).post(f"/photos/{photo.public_id}/share/")
    assert Photo.objects.get().share_token != token


def test_a_deleted_photo_is_gone_with_its_file(ada, dog, django_capture_on_commit_callbacks):
    photo = kept_photo(ada, dog)
    assert default_storage.exists(photo.file.name)
    with django_capture_on_commit_callbacks(execute=True):
        signed_in(ada).post(f"/photos/{photo.public_id}/delete/")
    assert not default_storage.exists(photo.file.name)
    assert not Photo.objects.exists()


def test_marking_twice_gives_a_persons_own_click_sd_from_then_on(ada, dog):
    first = kept_photo(ada, dog)
    assert first.click_sd_px == ASSUMED_SD_OF_WIDTH * WIDTH
    # Every landmark 3 px to the right and 4 px down: sqrt(25 / 4) px along each axis (Dahlberg 1940).
    again = {name: [x + 3, y + 4] for name, (x, y) in LANDMARKS.items()}
    second = kept_photo(ada, dog, again=again)
    assert second.click_sd_px == pytest.approx(2.5)
    assert Steadiness.objects.get(account=ada).landmarks == len(LANDMARKS)
    assert kept_photo(ada, dog).click_sd_px == pytest.approx(2.5)


def test_clicking_the_same_pixels_twice_makes_nobody_surer_than_half_a_pixel(ada, dog):
    assert kept_photo(ada, dog, again=LANDMARKS).click_sd_px == pytest.approx(0.5)


def test_a_dog_has_so_many_photos_and_no_more(ada, dog, monkeypatch):
    monkeypatch.setattr("ringside.photos.actions.MOST_OF_A_DOG", 1)
    first = kept_photo(ada, dog)
    answer = send(signed_in(ada), dog, uuid.uuid4(), told(), picture(size=(WIDTH, HEIGHT)))
    assert (answer.status_code, "delete one" in answer.json()["error"]) == (403, True)
    assert send(signed_in(ada), dog, first.public_id, told()).status_code == 200


def test_a_photo_is_marked_anew_under_its_own_dog_only(at, ada, dog):
    photo = kept_photo(ada, dog)
    client, other = signed_in(ada), at.other_entry.dog
    assert str(photo.public_id) in client.get(f"/photos/dogs/{dog.pk}/mark/?photo={photo.public_id}").content.decode()
    assert client.get(f"/photos/dogs/{other.pk}/mark/?photo={photo.public_id}").status_code == 404
    assert client.get(f"/photos/dogs/{dog.pk}/mark/?photo=nonsense").status_code == 200
    assert signed_in(at.accounts["secretary"]).get(f"/photos/dogs/{dog.pk}/mark/").status_code == 404
