"""Opens a ZIP file that somebody else may have made: what is not plainly a file at a plain place is refused.

Rule: every name is relative, has no `..`, no drive and no backslash, and stands once; no links, no encryption; only
stored or deflated members; the sizes that the directory names are added up before anything is unpacked, and a member
never gives more than its own.
"""

import shutil
import stat
import zipfile
import zlib
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path, PurePosixPath
from typing import IO

from ringside.core.denied import Denied

ENCRYPTED = 0x1
METHODS = (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED)


class BadZip(Denied):
    """The sentence says what is wrong with the file."""


@contextmanager
def opened(file: Path | IO[bytes], *, most_files: int, most_bytes: int) -> Iterator[zipfile.ZipFile]:
    """The archive with every member checked; `most_bytes` is what all of them may unpack to. Raises BadZip."""
    try:
        with zipfile.ZipFile(file) as archive:
            _check(archive, most_files, most_bytes)
            yield archive
    except (zipfile.BadZipFile, zlib.error, EOFError, NotImplementedError, UnicodeDecodeError):
        raise BadZip("The file is damaged, cut off, or no ZIP file at all.") from None


def _check(archive: zipfile.ZipFile, most_files: int, most_bytes: int) -> None:
    members = archive.infolist()
    if len(members) > most_files:
        raise BadZip("The file holds {files} files; at most {most} are taken.", files=len(members), most=most_files)
    if sum(member.file_size for member in members) > most_bytes:
        raise BadZip("Unpacked, the file would be larger than {most} MB.", most=most_bytes // 1_000_000)
    if len({member.filename for member in members}) < len(members):
        raise BadZip("The file holds two files of one name.")
    for member in members:
        _check_member(member)


def _check_member(member: zipfile.ZipInfo) -> None:
    name = member.filename
    if member.flag_bits & ENCRYPTED:
        raise BadZip("The file has a password. Make it without one.")
    if member.compress_type not in METHODS:
        raise BadZip("“{name}” is packed in a way that is not taken.", name=name[:80])
    if stat.S_IFMT(member.external_attr >> 16) not in (0, stat.S_IFREG) or not is_plain(name):
        raise BadZip("“{name}” is not a plain file at a plain place.", name=name[:80])


def is_plain(name: str) -> bool:
    """Whether the name leads to a file below the folder it is unpacked in, and nowhere else."""
    path = PurePosixPath(name)
    unclean = any(sign in name for sign in ("\\", ":", "\0")) or name != str(path)
    return bool(path.parts) and not path.is_absolute() and not unclean and ".." not in path.parts


def copy_out(archive: zipfile.ZipFile, name: str, target: Path) -> None:
    """Unpacks one member to a new file; what it says of its own size and checksum must hold."""
    target.parent.mkdir(parents=True, exist_ok=True)
    with archive.open(name) as source, target.open("xb") as copy:
        shutil.copyfileobj(source, copy, 1024 * 1024)
