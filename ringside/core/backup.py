"""Copies of the database while the show runs, and how one is brought back.

SQLite: `VACUUM INTO` a temporary name, then rename; the incremental backup call starves beside a busy writer.
PostgreSQL: its own pg_dump and pg_restore, which must be installed.
"""

import os
import shutil
import sqlite3
import subprocess
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import Any


class BackupFailed(Exception):
    """The sentence says what is wrong and what to do."""


def is_sqlite(database: Mapping[str, Any]) -> bool:
    return str(database["ENGINE"]).endswith("sqlite3")


def save(database: Mapping[str, Any], target: Path) -> Path:
    """Writes a whole, consistent copy of the database to `target`; either the whole file is there or none."""
    target.parent.mkdir(parents=True, exist_ok=True)
    with written_whole(target) as unfinished:
        _copy_sqlite(database, unfinished) if is_sqlite(database) else _dump_postgres(database, unfinished)
    return target


def bring_back(database: Mapping[str, Any], source: Path) -> None:
    """Puts a copy into the place of an empty database. Raises BackupFailed where there is anything to overwrite."""
    if not source.is_file():
        raise BackupFailed(f"There is no file {source}.")
    _restore_sqlite(database, source) if is_sqlite(database) else _restore_postgres(database, source)


def _copy_sqlite(database: Mapping[str, Any], target: Path) -> None:
    connection = sqlite3.connect(database["NAME"], timeout=60)
    try:
        connection.execute("VACUUM INTO ?", (str(target),))
    finally:
        connection.close()


def _restore_sqlite(database: Mapping[str, Any], source: Path) -> None:
    place = Path(database["NAME"])
    if place.exists() and place.stat().st_size:
        raise BackupFailed(f"{place} is there already. Move it away first; nothing was overwritten.")
    if not _is_sound(source):
        raise BackupFailed(f"{source} is damaged or no copy of a database; nothing was changed.")
    # What a write-ahead log of another database holds must never be read into this one.
    for ending in ("-wal", "-shm"):
        place.with_name(place.name + ending).unlink(missing_ok=True)
    unfinished = place.with_name(f".{place.name}.unfinished")
    shutil.copyfile(source, unfinished)
    synced(unfinished)
    unfinished.rename(place)


def _is_sound(source: Path) -> bool:
    connection = sqlite3.connect(f"{source.resolve().as_uri()}?mode=ro", uri=True)
    try:
        return bool(connection.execute("PRAGMA integrity_check").fetchone() == ("ok",))
    except sqlite3.DatabaseError:
        return False
    finally:
        connection.close()


def _dump_postgres(database: Mapping[str, Any], target: Path) -> None:
    _run(database, "pg_dump", "--format=custom", "--no-owner", "--no-privileges", f"--file={target}")


def _restore_postgres(database: Mapping[str, Any], source: Path) -> None:
    options = ("--no-owner", "--no-privileges", "--exit-on-error", "--single-transaction")
    _run(database, "pg_restore", *options, f"--dbname={database['NAME']}", str(source))


def _run(database: Mapping[str, Any], program: str, *arguments: str) -> None:
    if shutil.which(program) is None:
        raise BackupFailed(f"{program} is not installed. On Debian and Ubuntu: apt install postgresql-client")
    done = subprocess.run(
        [program, *arguments], env={**os.environ, **_address(database)}, capture_output=True, text=True, check=False
    )
    if done.returncode:
        raise BackupFailed(f"{program} failed: {done.stderr.strip()[-500:]}")


def _address(database: Mapping[str, Any]) -> dict[str, str]:
    """The server's address in the variables that PostgreSQL's own programs read; never on a command line."""
    names = {"PGHOST": "HOST", "PGPORT": "PORT", "PGUSER": "USER", "PGPASSWORD": "PASSWORD", "PGDATABASE": "NAME"}
    return {variable: str(database[key]) for variable, key in names.items() if database.get(key)}


@contextmanager
def written_whole(target: Path) -> Iterator[Path]:
    """Where to write: once on the disk it gets the target's name; where anything goes wrong, nothing is left."""
    unfinished = target.with_name(f".{target.name}.unfinished")
    unfinished.unlink(missing_ok=True)
    try:
        yield unfinished
        synced(unfinished)
        unfinished.rename(target)
        synced(target.parent)
    finally:
        unfinished.unlink(missing_ok=True)


def synced(path: Path) -> None:
    """Returns when the disk has what was written."""
    handle = os.open(path, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
