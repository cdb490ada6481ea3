"""A show taken out, taken in on another site and taken out again gives the same file, on both databases and across."""

import io
import json
import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest
from django.core.files.storage import default_storage
from django.test import Client

from ringside.dogs.models import Dog
from ringside.entries.models import Entry
from ringside.home.whole.into import read_show
from ringside.home.whole.out import write_show
from ringside.home.whole.schema import schema
from ringside.home.whole.tables import covered
from ringside.people.models import Account, Person
from ringside.photos.models import Photo
from ringside.results.models import Critique
from ringside.ring.actions import as_edit, edits_of, settle
from ringside.ring.models import Edit, Sheet
from ringside.shows.models import Ring, Show, ShowClass
from scoring.sheet import digest
from tests.home.whole.comparing import content, different
from tests.home.whole.full_show import full_show
from tests.places import postgres
from tests.results.structure import problems
from tests.served import served, unprepared

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


def out(show: Show) -> bytes:
    target = io.BytesIO()
    write_show(show, target)
    return target.getvalue()


def emptied() -> None:
    """As on a site that was just set up."""
    for model in reversed(covered()):
        model._base_manager.all().delete()
    for folder in ("photos", "proofs"):
        for name in default_storage.listdir(folder)[1]:
            default_storage.delete(f"{folder}/{name}")


@pytest.fixture
def file() -> bytes:
    return out(full_show().show)


def test_the_file_holds_a_row_of_everything(file):
    told = content(file)
    assert [label for label, rows in told["tables"].items() if not rows] == []
    assert len(told["bytes"]) == 4


def test_the_file_is_as_its_schema_says(file):
    with zipfile.ZipFile(io.BytesIO(file)) as archive:
        assert problems(json.loads(archive.read("show.json")), schema()) == []


def test_out_in_and_out_again_is_the_same(file):
    emptied()
    assert different(out(read_show(io.BytesIO(file))), file) == []


def test_on_a_site_with_shows_of_its_own_nothing_is_mixed_up(file):
    emptied()
    for number in range(7):
        Person.objects.create(name=f"Own {number}")
        Account.objects.create_user(f"own{number}@here.example")
        Dog.objects.create(name=f"Own {number}", breed="boxer", sex="dog", born="2020-01-01")
    own = Show.objects.create(slug="own", name="Own", first_day="2026-01-01", last_day="2026-01-01")
    Ring.objects.create(show=own, name="1")
    show = read_show(io.BytesIO(file))
    assert different(out(show), file) == []
    assert Show.objects.count() == 2


def test_what_the_judge_wrote_means_the_same_dogs_afterwards(file):
    emptied()
    Dog.objects.create(name="Own", breed="boxer", sex="dog", born="2020-01-01")
    show = read_show(io.BytesIO(file))
    for sheet in Sheet.objects.filter(ring__show=show):
        before = (sheet.fields, sheet.signed, sheet.disputed, sheet.incomplete, sheet.held)
        settle(key=sheet.key, ring=sheet.ring)
        sheet.refresh_from_db()
        assert (sheet.fields, sheet.signed, sheet.disputed, sheet.incomplete, sheet.held) == before
    assert {edit.digest == digest(as_edit(edit)) for edit in Edit.objects.all()} == {True}
    first = Entry.objects.get(show=show, number=1)
    assert f"grade.{first.pk}" in {edit.field for edit in edits_of(f"class:{first.show_class_id}")}


def test_a_printed_critique_is_still_known_and_the_photo_is_there(file):
    emptied()
    Dog.objects.create(name="Own", breed="boxer", sex="dog", born="2020-01-01")
    read_show(io.BytesIO(file))
    critique = Critique.objects.get(entry__number=1, language="en")
    answer = Client().get(f"/check/{critique.fingerprint[:16]}/")
    assert answer.status_code == 200
    photo = Photo.objects.get()
    assert Client().get(f"/photos/shared/{photo.share_token}/picture/").status_code == 200


def test_an_account_brings_no_right_on_the_site(file):
    Account.objects.filter(email__startswith="secretary").update(runs_site=True)
    told = out(Show.objects.get(slug="small"))
    emptied()
    read_show(io.BytesIO(told))
    assert not Account.objects.filter(runs_site=True).exists()


def test_a_dog_that_is_here_keeps_its_owner_and_its_facts(file):
    emptied()
    here = Dog.objects.create(name="Known", breed="boxer", sex="dog", born="2020-01-01", chip="276098100000001")
    show = read_show(io.BytesIO(file))
    entry = Entry.objects.get(show=show, number=1)
    assert entry.dog == here
    assert entry.dog.name == "Known"
    assert not here.owners.exists()
    assert not here.titles.exists()


def test_a_show_goes_from_a_sqlite_site_to_another_database_by_the_commands(tmp_path):
    """The demo show from a deployment on SQLite to one on PostgreSQL, or on SQLite where there is no server."""
    first, second = tmp_path / "first", tmp_path / "second"
    first.mkdir()
    second.mkdir()
    server = os.environ.get("DATABASE_URL") and postgres()
    with served(first, None) as here, unprepared(second, server) as there:
        there.manage("prepare")
        slug = here.manage("shell", "--no-imports", "-c", SLUG).strip()
        here.manage("show_out", slug, str(tmp_path / "a.zip"))
        assert "is here, with" in there.manage("show_in", str(tmp_path / "a.zip"))
        there.manage("show_out", slug, str(tmp_path / "b.zip"))
        again = subprocess.run([sys.executable, "manage.py", "show_in", tmp_path / "a.zip"], env=there.environment,
                               cwd=Path(__file__).parents[3], capture_output=True, text=True, check=False)  # fmt: skip
    assert different((tmp_path / "a.zip").read_bytes(), (tmp_path / "b.zip").read_bytes()) == []
    assert again.returncode == 1
    assert "already" in again.stderr


SLUG = "from ringside.shows.models import Show; print(Show.objects.order_by('id').first().slug)"


def test_a_dog_with_one_number_in_two_classes_comes_over_with_it():
    show = full_show().show
    first = Entry.objects.select_related("show_class__show_breed").get(show=show, number=1)
    more = ShowClass.objects.create(show_breed=first.show_class.show_breed, sex="dog", code="champion")
    Entry.objects.create(show=show, show_class=more, dog=first.dog, number=1)
    file = out(show)
    emptied()
    again = read_show(io.BytesIO(file))
    assert different(out(again), file) == []
    assert Entry.objects.filter(show=again, number=1).values("dog").distinct().count() == 1
