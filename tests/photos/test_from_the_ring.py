"""Photos taken in the ring: by whom, read by whom and when, and the mark that a reading proposes."""

import json
import uuid
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile

from ringside.core.models import AuditLine
from ringside.photos.bearing import POINTS, bearings, proposed
from ringside.photos.measured import reading_of
from ringside.photos.models import Photo
from ringside.photos.queries import photos_of, photos_of_entry
from ringside.ring.access import SESSION_KEY
from ringside.ring.models import Pairing, Sheet
from ringside.shows.models import Appointment
from scoring.standards.loader import codes, load
from tests.photos.pictures import picture
from tests.photos.sending import HEIGHT, LANDMARKS, WIDTH, kept_photo, signed_in, told
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def at() -> SmallShow:
    return small_show()


def send(client, at, entry, public_id=None, **more):
    photo = SimpleUploadedFile("dog.jpg", picture(size=(WIDTH, HEIGHT)), "image/jpeg")
    address = f"/ring/{at.ring.pk}/dogs/{entry.pk}/photos/{public_id or uuid.uuid4()}/"
    return client.post(
        address, {"told": json.dumps(told(**more)), "photo": photo}, headers={"Accept": "application/json"}
    )


def taken(at, who="judge") -> Photo:
    answer = send(signed_in(at.accounts[who]), at, at.entries[0])
    assert answer.status_code == 200, answer.content
    return Photo.objects.get(public_id=answer.json()["id"])


def finish(at) -> None:
    breed = at.show_class.show_breed
    Sheet.objects.create(key=f"breed:{breed.pk}", ring=at.ring, show_breed=breed, signed={})


def readings(at, who="judge"):
    return signed_in(at.accounts[who]).get(f"/ring/{at.ring.pk}/dogs/{at.entries[0].pk}/readings/").json()["photos"]


def test_the_judge_reads_at_once_what_was_taken_in_the_ring_by_number(at):
    photo = taken(at)
    assert (photo.ring, photo.entry) == (at.ring, at.entries[0])
    assert AuditLine.objects.filter(doing="mark-photo", scope=f"show:{at.show.pk}").exists()
    page = signed_in(at.accounts["judge"]).get(f"/ring/{at.ring.pk}/photos/{photo.public_id}/").content.decode()
    assert "Number 1" in page
    assert at.entries[0].dog.name not in page
    assert {row["point"] for row in readings(at)[0]["rows"]} >= {"croup", "front-angulation"}


def test_a_paired_tablet_takes_photos_without_an_account(at, client):
    pairing = Pairing.objects.create(
        ring=at.ring, day=at.show.first_day, kind="judge", code_digest="d", made_at=datetime.now(UTC),
        used_at=datetime.now(UTC), ends_at=datetime.now(UTC) + timedelta(hours=1),
    )  # fmt: skip
    session = client.session
    session[SESSION_KEY] = pairing.pk
    session.save()
    again = {name: [x + 3, y + 4] for name, (x, y) in LANDMARKS.items()}
    answer = send(client, at, at.entries[0], again=again)
    assert answer.status_code == 200
    photo = Photo.objects.get()
    assert (photo.uploaded_by, photo.ring) == (None, at.ring)
    assert photo.click_sd_px == pytest.approx(2.5)


def test_owner_and_office_read_it_once_the_breed_is_finished(at):
    photo = taken(at)
    pages = (f"/photos/{photo.public_id}/", f"/photos/{photo.public_id}/picture/")
    for who in ("ada", "secretary"):
        assert {signed_in(at.accounts[who]).get(page).status_code for page in pages} == {404}
    assert not photos_of(photo.dog)
    assert not photos_of_entry(photo.entry)
    finish(at)
    for who in ("ada", "secretary"):
        assert {signed_in(at.accounts[who]).get(page).status_code for page in pages} == {200}
    assert list(photos_of(photo.dog)) == list(photos_of_entry(photo.entry)) == [photo]


def test_the_judge_reads_the_owners_photo_of_the_day_only_once_the_breed_is_finished(at):
    photo = kept_photo(at.accounts["ada"], at.entries[0].dog, taken_on=at.show.first_day.isoformat())
    address = f"/ring/{at.ring.pk}/photos/{photo.public_id}/"
    assert readings(at) == []
    assert signed_in(at.accounts["judge"]).get(address).status_code == 404
    finish(at)
    assert len(readings(at)) == 1
    assert signed_in(at.accounts["judge"]).get(address).status_code == 200


def test_the_office_lists_the_photos_of_its_show(at):
    office = signed_in(at.accounts["secretary"])
    photo, address = taken(at), f"/office/{at.show.slug}/photos/"
    assert "No photo of this show yet" in office.get(address).content.decode()
    finish(at)
    assert f"/photos/{photo.public_id}/" in office.get(address).content.decode()
    assert address in office.get(f"/office/{at.show.slug}/").content.decode()


def test_only_the_ring_of_the_dog_takes_its_photo_and_marks_it(at):
    judge, public_id = signed_in(at.accounts["judge"]), uuid.uuid4()
    assert send(judge, at, at.other_entry).status_code == 404
    assert send(signed_in(at.accounts["other-judge"]), at, at.entries[0]).status_code == 403
    assert send(judge, at, at.entries[0], public_id).status_code == 200
    answer = signed_in(at.accounts["ada"]).post(
        f"/photos/dogs/{at.entries[0].dog_id}/send/{public_id}/", {"told": json.dumps(told())}
    )
    assert (answer.status_code, b"taken in the ring" in answer.content) == (403, True)


def test_a_dog_whose_sex_is_judged_in_another_ring_is_photographed_there(at):
    """The breed's dogs go to ring 2; the breed itself stays in ring 1."""
    Appointment.objects.create(show_breed=at.show_class.show_breed, sex="dog", ring=at.other_ring)
    steward = signed_in(at.accounts["steward"])
    assert send(steward, at, at.entries[0]).status_code == 404
    assert send(steward, replace(at, ring=at.other_ring), at.entries[0]).status_code == 200
    photo = Photo.objects.get()
    assert (photo.ring, photo.entry) == (at.other_ring, at.entries[0])
    address = f"/ring/{at.other_ring.pk}/photos/{photo.public_id}/"
    assert steward.get(address).status_code == 200
    assert steward.post(f"{address}delete/").status_code == 302


def test_the_ring_takes_its_photo_back_until_the_breed_is_finished(at):
    first, second = taken(at), taken(at, "writer")
    judge = signed_in(at.accounts["judge"])
    assert judge.post(f"/ring/{at.ring.pk}/photos/{first.public_id}/delete/").status_code == 302
    finish(at)
    answer = judge.post(f"/ring/{at.ring.pk}/photos/{second.public_id}/delete/")
    assert (answer.status_code, b"only the dog" in answer.content) == (403, True)
    assert list(Photo.objects.all()) == [second]


def test_a_file_that_is_no_photo_is_refused_in_the_ring_too(at):
    address = f"/ring/{at.ring.pk}/dogs/{at.entries[0].pk}/photos/{uuid.uuid4()}/"
    file = SimpleUploadedFile("dog.jpg", b"MZ\x90\x00", "image/jpeg")
    answer = signed_in(at.accounts["judge"]).post(address, {"told": json.dumps(told()), "photo": file})
    assert answer.status_code == 422


def test_a_reading_proposes_the_mark_of_its_words_and_none_where_it_cannot_be_told():
    assert [proposed("croup-slope", words) for words in ("as-asked", "a-little-much", "much-too-much")] == [0, 1, 2]
    # A wide angle is a straight front: too little angulation.
    assert proposed("front-angle", "a-little-much") == -1
    assert proposed("rear-angle", "much-too-little") == 2
    for words in ("perhaps-too-much", "cannot-be-told", "no-target", "withheld"):
        assert proposed("croup-slope", words) is None
    assert proposed("hock-angle", "as-asked") is None


@pytest.mark.parametrize("breed", codes())
def test_the_ends_of_a_point_are_the_ends_of_its_measurement(breed):
    """The names of the trade (common practice): a steep croup has more slope, a straight front a wider angle."""
    for measurement, (code, less_is) in POINTS.items():
        point = load(breed).point(code)
        if point and measurement in ("front-angle", "rear-angle"):
            assert less_is == "high"
            assert "straight" in (point.low or "")


def test_nothing_is_set_on_a_sheet_by_a_photo(at):
    photo = taken(at)
    assert bearings(reading_of(photo))
    assert not Sheet.objects.filter(entry=at.entries[0]).exists()
