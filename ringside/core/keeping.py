"""One file that holds everything a deployment keeps: the database, and the photos and papers beside it.

Rule: the files come first, then the database, then the files that came meanwhile. A file is written before the row
that names it and goes after that row went, so that every row of the copy finds its file; once written, a file never
changes. Limit: a photo that was sent and deleted again within the second in which the database is copied may leave a
row without a file.
"""

import contextlib
import json
import shutil
import tempfile
import time
import zipfile
from collections.abc import Mapping
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from ringside.core import zipped
from ringside.core.backup import BackupFailed, bring_back, is_sqlite, save, written_whole

FORMAT, VERSION = "ringside-backup", 1
ABOUT, DATABASE, FILES = "about.json", "database", "media/"
MOST_FILES = 2_000_000
UNFINISHED = ".unfinished-restore"
# A file younger than this may still be being written.
SETTLED_S = 10
# What a ZIP file begins with; a copy of a database alone, as earlier versions wrote it, begins otherwise.
ZIP_BEGINS = b"PK\x03\x04"


def keep_all(database: Mapping[str, Any], media: Path, target: Path) -> Path:
    """Writes database and files to `target` while the site is served; either the whole file is there or none."""
    target.parent.mkdir(parents=True, exist_ok=True)
    with (
        tempfile.TemporaryDirectory(dir=target.parent, prefix=".backup-") as folder,
        written_whole(target) as unfinished,
        zipfile.ZipFile(unfinished, "w", zipfile.ZIP_STORED) as archive,
    ):
        aside = Path(folder) / "young"
        # Twice before: the first pass takes its time, and what came meanwhile may be gone after the database.
        known = _add(archive, media, set(), aside)
        known = _add(archive, media, known, aside)
        copy = save(database, Path(folder) / DATABASE)
        known = _add(archive, media, known, aside)
        for name in sorted(_files_of(aside) - known):
            archive.write(aside / name, FILES + name)
        archive.write(copy, DATABASE, zipfile.ZIP_DEFLATED)
        archive.writestr(ABOUT, json.dumps(_about(database)))
    return target


def _about(database: Mapping[str, Any]) -> dict[str, Any]:
    made_at = datetime.now(UTC).isoformat(timespec="seconds")
    return {"format": FORMAT, "version": VERSION, "database": _kind(database), "made_at": made_at}


def _kind(database: Mapping[str, Any]) -> str:
    return "sqlite" if is_sqlite(database) else "postgresql"


def _files_of(media: Path) -> set[str]:
    """Every kept file's place below the folder; links are nothing that the site makes."""
    found = (path for path in media.rglob("*") if path.is_file() and not path.is_symlink())
    return {path.relative_to(media).as_posix() for path in found if UNFINISHED not in path.parts}


def _add(archive: zipfile.ZipFile, media: Path, known: set[str], aside: Path) -> set[str]:
    """Adds the files that are not known yet; all that are known then. One deleted meanwhile lost its row before.

    A young file is copied aside, anew with each pass: the last copy of one that a row names is whole.
    """
    added = set()
    settled = time.time() - SETTLED_S
    for name in sorted(_files_of(media) - known):
        with contextlib.suppress(FileNotFoundError):
            if (media / name).stat().st_mtime > settled:
                (aside / name).parent.mkdir(parents=True, exist_ok=True)
                shutil.copyfile(media / name, aside / name)
            else:
                archive.write(media / name, FILES + name)
                added.add(name)
    return known | added


def bring_all_back(database: Mapping[str, Any], media: Path, source: Path) -> int:
    """Puts database and files into empty places; how many files there were. BackupFailed where anything would go."""
    if not source.is_file():
        raise BackupFailed(f"There is no file {source}.")
    with source.open("rb") as file:
        is_whole = file.read(len(ZIP_BEGINS)) == ZIP_BEGINS
    if not is_whole:
        bring_back(database, source)
        return 0
    _require_empty(media)
    free = shutil.disk_usage(media).free
    try:
        with zipped.opened(source, most_files=MOST_FILES, most_bytes=free) as archive:
            return _unpack(archive, database, media)
    except zipped.BadZip as error:
        raise BackupFailed(f"{source}: {error} Nothing was changed.") from None
    finally:
        shutil.rmtree(media / UNFINISHED, ignore_errors=True)


def _require_empty(media: Path) -> None:
    media.mkdir(parents=True, exist_ok=True)
    shutil.rmtree(media / UNFINISHED, ignore_errors=True)
    if any(media.iterdir()):
        raise BackupFailed(f"There are files in {media} already. Move them away first; nothing was overwritten.")


def _unpack(archive: zipfile.ZipFile, database: Mapping[str, Any], media: Path) -> int:
    """Everything is unpacked and checked before the database is touched; the files then only change their place."""
    names = [name for name in archive.namelist() if name.startswith(FILES) and UNFINISHED not in name]
    _require_ours(archive, names, database)
    place = media / UNFINISHED
    for name in [DATABASE, *names]:
        zipped.copy_out(archive, name, place / name)
    bring_back(database, place / DATABASE)
    for found in (place / FILES).iterdir() if names else ():
        found.rename(media / found.name)
    return len(names)


def _require_ours(archive: zipfile.ZipFile, names: list[str], database: Mapping[str, Any]) -> None:
    others = set(archive.namelist()) - {*names, ABOUT, DATABASE}
    if others or not {ABOUT, DATABASE} <= set(archive.namelist()):
        raise zipped.BadZip("This is no file that `backup` wrote.")
    try:
        about = json.loads(archive.read(ABOUT)) if archive.getinfo(ABOUT).file_size < 10_000 else None
    except ValueError:
        about = None
    if not isinstance(about, dict) or about.get("format") != FORMAT:
        raise zipped.BadZip("This is no file that `backup` wrote.")
    if about.get("version") != VERSION:
        raise zipped.BadZip("A newer version of the program wrote this file. Bring it back with that version.")
    if about.get("database") != _kind(database):
        raise zipped.BadZip(
            "It holds a database of another kind ({kind}). Bring it back there, and carry each show over with "
            "`show_out` and `show_in`.",
            kind=about.get("database"),
        )
