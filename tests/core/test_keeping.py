"""A backup holds database and files, agrees with itself while the site writes, and only plain files come back."""

import json
import sqlite3
import stat
import threading
import zipfile
from pathlib import Path

import pytest

from ringside.core.backup import BackupFailed
from ringside.core.keeping import bring_all_back, keep_all

SQLITE = "django.db.backends.sqlite3"
ABOUT = {"format": "ringside-backup", "version": 1, "database": "sqlite"}


class Kept:
    """A database whose rows name files, written and deleted in the site's order: file, row; row, file."""

    def __init__(self, folder: Path) -> None:
        self.media = folder / "media"
        (self.media / "photos").mkdir(parents=True)
        self.database = {"ENGINE": SQLITE, "NAME": str(folder / "show.sqlite3")}
        with self.connect() as connection:
            connection.execute("PRAGMA journal_mode=WAL")
            connection.execute("create table photo (name text primary key)")
        connection.close()

    def connect(self):
        return sqlite3.connect(self.database["NAME"], timeout=60)

    def add(self, connection, name: str) -> None:
        (self.media / name).write_bytes(name.encode() * 500)
        with connection:
            connection.execute("insert into photo values (?)", (name,))

    def delete(self, connection, name: str) -> None:
        with connection:
            connection.execute("delete from photo where name = ?", (name,))
        (self.media / name).unlink()


@pytest.fixture
def kept(tmp_path):
    found = Kept(tmp_path / "site")
    connection = found.connect()
    for number in range(20):
        found.add(connection, f"photos/{number}.jpg")
    connection.close()
    return found


@pytest.fixture
def place(tmp_path):
    return {"ENGINE": SQLITE, "NAME": str(tmp_path / "new.sqlite3")}, tmp_path / "new-media"


def rows(database) -> set[str]:
    connection = sqlite3.connect(database["NAME"])
    try:
        return {name for (name,) in connection.execute("select name from photo")}
    finally:
        connection.close()


def test_database_and_files_come_back_as_they_were(kept, place, tmp_path):
    copy = keep_all(kept.database, kept.media, tmp_path / "safe" / "copy.zip")
    assert bring_all_back(*place, copy) == 20
    names = rows(place[0])
    assert names == rows(kept.database)
    assert all((place[1] / name).read_bytes() == (kept.media / name).read_bytes() for name in names)
    assert sorted(path.name for path in place[1].iterdir()) == ["photos"]


def test_every_row_of_a_copy_made_beside_a_busy_writer_finds_its_file(kept, tmp_path):
    stop, made, old = threading.Event(), [], []
    most = 300  # beside one copy: on a slow disk the copies would never catch up

    def write() -> None:
        connection = kept.connect()
        number = 100
        while not stop.is_set():
            if len(made) >= most:
                stop.wait(0.001)
                continue
            kept.add(connection, f"photos/{number}.jpg")
            made.append(f"photos/{number}.jpg")
            if old and number % 3 == 0:
                kept.delete(connection, old.pop())
            number += 1
        connection.close()

    writer = threading.Thread(target=write)
    writer.start()
    try:
        copies = []
        for number in range(6):
            old.extend(made[len(made) // 2 :])
            del made[:]
            copies.append(keep_all(kept.database, kept.media, tmp_path / f"copy-{number}.zip"))
    finally:
        stop.set()
        writer.join()
    assert made
    for number, copy in enumerate(copies):
        database = {"ENGINE": SQLITE, "NAME": str(tmp_path / f"{number}.sqlite3")}
        media = tmp_path / f"media-{number}"
        bring_all_back(database, media, copy)
        names = rows(database)
        assert len(names) >= 20
        assert [name for name in names if (media / name).read_bytes() != name.encode() * 500] == []


def test_nothing_is_overwritten(kept, place, tmp_path):
    copy = keep_all(kept.database, kept.media, tmp_path / "copy.zip")
    place[1].mkdir()
    (place[1] / "mine.txt").write_text("mine")
    with pytest.raises(BackupFailed, match="nothing was overwritten"):
        bring_all_back(*place, copy)
    with pytest.raises(BackupFailed, match="nothing was overwritten"):
        bring_all_back(kept.database, tmp_path / "empty", copy)
    assert list((tmp_path / "empty").iterdir()) == []
    assert not Path(place[0]["NAME"]).exists()


def test_a_copy_of_the_database_alone_still_comes_back(kept, place, tmp_path):
    from ringside.core.backup import save

    copy = save(kept.database, tmp_path / "old.sqlite3")
    assert bring_all_back(*place, copy) == 0
    assert len(rows(place[0])) == 20


def test_a_copy_of_another_kind_of_database_says_where_it_belongs(kept, place, tmp_path):
    copy = tmp_path / "other.zip"
    with zipfile.ZipFile(copy, "w") as archive:
        archive.writestr("about.json", json.dumps({**ABOUT, "database": "postgresql"}))
        archive.writestr("database", b"PGDMP")
    with pytest.raises(BackupFailed, match="another kind"):
        bring_all_back(*place, copy)


def link(name: str) -> zipfile.ZipInfo:
    info = zipfile.ZipInfo(name)
    info.external_attr = (stat.S_IFLNK | 0o777) << 16
    return info


@pytest.mark.parametrize(
    "name",
    ["media/../../out.txt", "/etc/out.txt", "media//out.txt", "media/c:/out.txt", "media/..\\out.txt", "media/./x",
     "media/folder/", "somewhere/else.txt", "media/.unfinished-restore/x", link("media/link")],
    ids=str,
)  # fmt: skip
def test_a_name_that_leads_elsewhere_is_refused_and_nothing_is_written(kept, place, tmp_path, name):
    copy = keep_all(kept.database, kept.media, tmp_path / "copy.zip")
    with zipfile.ZipFile(copy, "a") as archive:
        archive.writestr(name, b"/etc/passwd")
    with pytest.raises(BackupFailed, match="Nothing was changed"):
        bring_all_back(*place, copy)
    assert list(place[1].iterdir()) == []
    assert not Path(place[0]["NAME"]).exists()
    assert not (tmp_path / "out.txt").exists()


@pytest.mark.parametrize("kept_bytes", [100, 2000, -200])
def test_a_file_that_is_cut_off_is_refused(kept, place, tmp_path, kept_bytes):
    copy = keep_all(kept.database, kept.media, tmp_path / "copy.zip")
    copy.write_bytes(copy.read_bytes()[:kept_bytes])
    with pytest.raises(BackupFailed, match="damaged"):
        bring_all_back(*place, copy)
    assert not Path(place[0]["NAME"]).exists()


def test_a_photo_whose_bytes_were_changed_is_refused(kept, place, tmp_path):
    copy = keep_all(kept.database, kept.media, tmp_path / "copy.zip")
    content = copy.read_bytes()
    assert content.count(b"photos/7.jpg" * 3)
    copy.write_bytes(content.replace(b"photos/7.jpg" * 3, b"photos/8.jpg" * 3))
    with pytest.raises(BackupFailed, match="damaged"):
        bring_all_back(*place, copy)
    assert list(place[1].iterdir()) == []


def test_what_claims_to_unpack_larger_than_the_disk_is_refused(kept, place, tmp_path, monkeypatch):
    copy = keep_all(kept.database, kept.media, tmp_path / "copy.zip")
    monkeypatch.setattr("shutil.disk_usage", lambda _: type("Usage", (), {"free": 1000})())
    with pytest.raises(BackupFailed, match="larger than"):
        bring_all_back(*place, copy)
