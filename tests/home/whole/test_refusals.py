"""A file that is not a show's, or that was changed to harm, is refused in words, and nothing of it stays."""

import hashlib
import io
import json
import zipfile

import pytest
from django.core.files.storage import default_storage
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client

from ringside.home.whole.into import read_show
from ringside.home.whole.reading import NotTakenIn
from ringside.people.models import Account
from ringside.shows.models import Role, Show
from tests.home.whole.full_show import full_show
from tests.home.whole.test_round_trip import emptied, out
from tests.photos.pictures import picture

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def file() -> bytes:
    told = out(full_show().show)
    emptied()
    return told


PHOTOS = ".jpg"


def changed(file: bytes, change=None, photo=None, text=None) -> io.BytesIO:
    """The file again with its content changed by a function, its photo replaced, or its text as given."""
    target = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(file)) as source, zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as copy:
        told = json.loads(source.read("show.json"))
        if change:
            change(told)
        for name in source.namelist():
            if name != "show.json":
                copy.writestr(name, photo if photo and name.endswith(PHOTOS) else source.read(name))
        copy.writestr("show.json", json.dumps(told) if text is None else text)
    target.seek(0)
    return target


def refused(file: io.BytesIO, words: str) -> None:
    with pytest.raises(NotTakenIn, match=words):
        read_show(file)
    assert not Show.objects.exists()
    assert not Account.objects.exists()
    assert default_storage.listdir("photos")[1] == []


def row(told, label, number=0):
    return told["tables"][label][number]


CHANGES = {
    "another format": (lambda told: told.update(format="other"), "no file of a show"),
    "a newer version": (lambda told: told.update(version=99), "same version"),
    "a table missing": (lambda told: told["tables"].pop("dogs.dog"), "same tables"),
    "no tables": (lambda told: told.pop("tables"), "not complete"),
    "a table that is no list": (lambda told: told["tables"].update({"dogs.dog": {}}), "no list"),
    "an unknown field": (lambda told: row(told, "people.account").update(runs_site=True), "fields that it must have"),
    "two shows": (lambda told: told["tables"]["shows.show"].append(row(told, "shows.show")), "exactly one show"),
    "one id twice": (lambda told: told["tables"]["dogs.dog"].append(row(told, "dogs.dog")), "one id twice"),
    "a link to nothing": (lambda told: row(told, "entries.entry").update(dog=99), "not in it"),
    "a link that is a list": (lambda told: row(told, "entries.entry").update(dog=[1]), "not in it"),
    "an id that is a list": (lambda told: row(told, "dogs.dog").update(id=[1]), "one id twice"),
    "a name too long": (lambda told: row(told, "dogs.dog").update(name="x" * 161), "cannot be kept"),
    "a name that is a number": (lambda told: row(told, "dogs.dog").update(name=5), "cannot be kept"),
    "zero bytes": (lambda told: row(told, "dogs.dog").update(name="a\0b"), "zero bytes"),
    "a day that is none": (lambda told: row(told, "dogs.dog").update(born="2026-02-30"), "cannot be kept"),
    "no day": (lambda told: row(told, "dogs.dog").update(born=None), "missing"),
    "a sex that is none": (lambda told: row(told, "dogs.dog").update(sex="cat"), "cannot be kept"),
    "a mark out of range": (lambda told: row(told, "ring.mark").update(mark=9), "contradicts itself"),
    "one number for two dogs": (lambda told: row(told, "entries.entry").update(number=2), "contradicts itself"),
    "unknown rules": (lambda told: row(told, "shows.show").update(rules="moon"), "no rules or standard"),
    "an unknown breed": (lambda told: row(told, "shows.showbreed").update(breed="griffin"), "no rules or standard"),
    "a critique's words": (
        lambda told: row(told, "results.critique").update(sentences=["Splendid."]), "changed after it was signed",
    ),
    "a photo that is not there": (lambda told: row(told, "photos.photo").update(file="files/9.jpg"), "not in it"),
    "a photo elsewhere": (lambda told: row(told, "photos.photo").update(file="../../secret"), "not in it"),
    "bytes that are none": (lambda told: row(told, "entries.entryfile").update(content="?"), "cannot be kept"),
}  # fmt: skip


@pytest.mark.parametrize("name", CHANGES)
def test_a_changed_file_is_refused_whole(file, name):
    change, words = CHANGES[name]
    refused(changed(file, change), words)


@pytest.mark.parametrize("text", ["", "{", "[]", "null", "[" * 100_000, '{"format": NaN}', b"\xff\xfe"])
def test_broken_json_is_refused(file, text):
    refused(changed(file, text=text), "broken|no file of a show")


def test_a_file_that_is_no_archive_is_refused(file):
    refused(io.BytesIO(b"GIF89a"), "no ZIP file")
    refused(io.BytesIO(file[: len(file) // 2]), "no ZIP file")


@pytest.mark.parametrize("name", ["../evil.py", "/etc/evil", "files/../../evil", "elsewhere.txt", "files/extra.jpg"])
def test_a_name_that_is_not_the_files_own_is_refused(file, name):
    target = io.BytesIO(file)
    with zipfile.ZipFile(target, "a") as archive:
        archive.writestr(name, "evil")
    refused(target, "plain place|no file of a show|not those")


def test_what_unpacks_far_too_large_is_refused_before_it_is_unpacked(file, monkeypatch):
    monkeypatch.setattr("ringside.home.whole.reading.MOST_CONTENT", 1_000_000)
    refused(changed(file, text=" " * 2_000_000), "larger than")


def with_photo(file: bytes, photo: bytes, **more) -> io.BytesIO:
    """The sender who changes a photo changes what the file says of it as well."""

    def change(told):
        for about in (about for name, about in told["files"].items() if name.endswith(PHOTOS)):
            about["sha256"] = hashlib.sha256(photo).hexdigest()
        row(told, "photos.photo").update(more)

    return changed(file, change, photo)


def test_a_photo_that_was_changed_is_refused(file):
    refused(changed(file, photo=picture(size=(1250, 800))[:-1] + b"x"), "changed or damaged")


@pytest.mark.parametrize("content", [
    b"<script>alert(1)</script>", picture("PNG", (1250, 800)), picture(size=(1250, 799)),
    picture(size=(1250, 800)) + b"PK\x03\x04", picture(size=(1250, 800))[:-100],
], ids=["script", "png", "other size", "something behind it", "cut"])  # fmt: skip
def test_what_is_no_photo_as_we_keep_them_is_refused(file, content):
    refused(with_photo(file, content), "no picture")


def send(account, content: bytes):
    client = Client()
    client.force_login(account)
    return client.post("/office/show-in/", {"file": SimpleUploadedFile("show.zip", content)}, follow=True)


def test_whoever_runs_the_site_takes_a_show_in_with_a_button_and_owns_it(file):
    runner = Account.objects.create_user("runner@here.example", runs_site=True)
    page = send(runner, file)
    assert page.redirect_chain[-1][0] == "/office/small/"
    assert Role.objects.filter(show__slug="small", account=runner, kind="owner").exists()
    assert "already" in send(runner, file).content.decode()


def test_who_may_not_start_shows_takes_none_in(file):
    assert send(Account.objects.create_user("other@here.example"), file).status_code == 403
    assert not Show.objects.exists()


def test_a_file_that_is_none_is_answered_on_the_page(file):
    page = send(Account.objects.create_user("runner@here.example", runs_site=True), b"nothing")
    assert page.status_code == 400
    assert "no ZIP file" in page.content.decode()


def test_the_owner_takes_the_show_out_and_the_secretary_does_not(file):
    show = read_show(io.BytesIO(file))
    owner = Account.objects.create_user("owner@here.example")
    Role.objects.create(show=show, account=owner, kind="owner")
    client = Client()
    client.force_login(owner)
    answer = client.get("/office/small/show.zip")
    with zipfile.ZipFile(io.BytesIO(b"".join(answer.streaming_content))) as archive:
        assert json.loads(archive.read("show.json"))["format"] == "ringside-show"
    assert "no-store" in answer["Cache-Control"]
    client.force_login(Account.objects.get(email="secretary@small.example"))
    assert client.get("/office/small/show.zip").status_code == 403
