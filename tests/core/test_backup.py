"""A copy made while somebody writes is whole, and comes back as it was."""

import os
import shutil
import sqlite3
import threading
from urllib.parse import urlsplit

import psycopg
import pytest

from ringside.core.backup import BackupFailed, bring_back, save
from tests.places import postgres

SQLITE = "django.db.backends.sqlite3"


@pytest.fixture
def show(tmp_path):
    path = tmp_path / "show.sqlite3"
    with sqlite3.connect(path) as connection:
        connection.execute("PRAGMA journal_mode=WAL")
        connection.execute("create table edit (id integer primary key, text text)")
        connection.executemany("insert into edit (text) values (?)", [(f"mark {n}",) for n in range(500)])
    connection.close()
    return {"ENGINE": SQLITE, "NAME": str(path)}


def rows(path):
    connection = sqlite3.connect(path)
    try:
        return connection.execute("select count(*), max(id) from edit").fetchone()
    finally:
        connection.close()


def test_what_is_copied_comes_back(show, tmp_path):
    copy = save(show, tmp_path / "safe" / "copy.sqlite3")
    place = {"ENGINE": SQLITE, "NAME": str(tmp_path / "new.sqlite3")}
    bring_back(place, copy)
    assert rows(place["NAME"]) == (500, 500)


def test_a_copy_made_beside_a_busy_writer_is_whole(show, tmp_path):
    stop = threading.Event()
    written = []

    def write() -> None:
        connection = sqlite3.connect(show["NAME"], timeout=30)
        while not stop.is_set():
            with connection:
                written.append(connection.execute("insert into edit (text) values ('later')").lastrowid)
        connection.close()

    writer = threading.Thread(target=write)
    writer.start()
    try:
        copies = [save(show, tmp_path / f"copy-{n}.sqlite3") for n in range(5)]
    finally:
        stop.set()
        writer.join()
    assert written
    for copy in copies:
        count, last = rows(copy)
        assert count == last >= 500


def test_nothing_is_overwritten(show, tmp_path):
    copy = save(show, tmp_path / "copy.sqlite3")
    with pytest.raises(BackupFailed, match="nothing was overwritten"):
        bring_back(show, copy)


def test_a_damaged_copy_is_refused(show, tmp_path):
    copy = save(show, tmp_path / "copy.sqlite3")
    copy.write_bytes(copy.read_bytes()[: copy.stat().st_size // 2])
    place = {"ENGINE": SQLITE, "NAME": str(tmp_path / "new.sqlite3")}
    with pytest.raises(BackupFailed, match="damaged"):
        bring_back(place, copy)
    assert not os.path.exists(place["NAME"])


def test_a_missing_file_is_named(show, tmp_path):
    with pytest.raises(BackupFailed, match="no file"):
        bring_back({"ENGINE": SQLITE, "NAME": str(tmp_path / "x")}, tmp_path / "nowhere")


@pytest.mark.both_databases
def test_postgresql_is_copied_with_its_own_programs():
    address = postgres()
    if address is None or shutil.which("pg_dump") is None:
        pytest.skip("no PostgreSQL server or no pg_dump here")
    with psycopg.connect(address, autocommit=True) as server:
        for name in ("ringside_from", "ringside_to"):
            server.execute(f"drop database if exists {name} with (force)")
            server.execute(f"create database {name}")
        try:
            assert _copied(address) == (500,)
        finally:
            for name in ("ringside_from", "ringside_to"):
                server.execute(f"drop database if exists {name} with (force)")


def _copied(address):
    parts = urlsplit(address)
    base = address.rpartition("/")[0]
    settings = {
        "ENGINE": "django.db.backends.postgresql", "HOST": parts.hostname, "PORT": parts.port or 5432,
        "USER": parts.username, "PASSWORD": parts.password or "",
    }  # fmt: skip
    with psycopg.connect(f"{base}/ringside_from", autocommit=True) as source:
        source.execute("create table edit as select n as id from generate_series(1, 500) n")
    from pathlib import Path
    from tempfile import TemporaryDirectory

    with TemporaryDirectory() as folder:
        copy = save({**settings, "NAME": "ringside_from"}, Path(folder) / "copy.dump")
        bring_back({**settings, "NAME": "ringside_to"}, copy)
    with psycopg.connect(f"{base}/ringside_to") as target:
        return target.execute("select count(*) from edit").fetchone()
