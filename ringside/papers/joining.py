"""Several files of the same making as one, page after page, with one list of contents.

Reads what `page.py` writes and nothing else: plain objects, one table of where they stand, no encryption.
"""

import hashlib
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import BinaryIO

# A literal string is passed over whole, so that a title that reads like a reference stays what it is.
TOKEN = re.compile(rb"(?P<string>\((?:\\.|[^\\)])*\))|(?P<number>\d+) 0 R\b", re.DOTALL)
STREAM = re.compile(rb"\bstream\r?\n")
HEAD = b"%PDF-1.4\n%\xe2\xe3\xcf\xd3\n"


@dataclass(frozen=True)
class Piece:
    """One file taken apart: its objects by number, and which of them are the roots."""

    objects: dict[int, bytes]
    pages: int
    outlines: int
    catalog: int
    info: int

    @property
    def roots(self) -> frozenset[int]:
        """What the joined file has once, and therefore not from each piece."""
        return frozenset({self.outlines, self.catalog, self.info})

    def number(self, root: int, key: bytes) -> int:
        found = re.search(rb"/%s (\d+)" % key, self.objects[root])
        assert found is not None, key
        return int(found[1])


def join(contents: Sequence[bytes], target: BinaryIO, language: str) -> None:
    """Writes the pieces into one file; its title and author are the first piece's."""
    pieces = [taken_apart(content) for content in contents]
    bases = _bases(pieces)
    out = _Writer(target)
    kids = [base + piece.pages for piece, base in zip(pieces, bases, strict=True)]
    for index, piece in enumerate(pieces):
        _write_piece(out, pieces, bases, index)
        out.put(kids[index], _with(_moved(piece.objects[piece.pages], bases[index]), b"/Parent 2 0 R"))
    pages = sum(piece.number(piece.pages, b"Count") for piece in pieces)
    titles = sum(piece.number(piece.outlines, b"Count") for piece in pieces)
    listed = b" ".join(b"%d 0 R" % kid for kid in kids)
    out.put(
        1,
        b"<< /Type /Catalog /Lang (%s) /Pages 2 0 R /Outlines 3 0 R /PageMode /UseOutlines"
        b" /ViewerPreferences << /DisplayDocTitle true >> >>" % language.encode(),
    )
    out.put(2, b"<< /Type /Pages /Kids [ %s ] /Count %d >>" % (listed, pages))
    first = bases[0] + pieces[0].number(pieces[0].outlines, b"First")
    last = bases[-1] + pieces[-1].number(pieces[-1].outlines, b"Last")
    out.put(3, b"<< /Type /Outlines /First %d 0 R /Last %d 0 R /Count %d >>" % (first, last, titles))
    out.put(4, _moved(pieces[0].objects[pieces[0].info], bases[0]))
    out.close()


def taken_apart(content: bytes) -> Piece:
    start = int(content[content.rindex(b"startxref") + 9 :].split()[0])
    trailer = content[content.index(b"trailer", start) :]
    offsets = [int(line[:10]) for line in re.findall(rb"\d{10} \d{5} n", content[start:])]
    ends = sorted([*offsets, start])
    objects = {}
    for offset in offsets:
        text = content[offset : ends[ends.index(offset) + 1]]
        number, body = re.match(rb"(\d+) 0 obj\s*(.*)endobj", text, re.DOTALL).groups()  # type: ignore[union-attr]
        objects[int(number)] = body
    catalog = int(re.search(rb"/Root (\d+)", trailer)[1])  # type: ignore[index]
    info = int(re.search(rb"/Info (\d+)", trailer)[1])  # type: ignore[index]
    whole = Piece(objects, 0, 0, catalog, info)
    return Piece(objects, whole.number(catalog, b"Pages"), whole.number(catalog, b"Outlines"), catalog, info)


def _bases(pieces: Sequence[Piece]) -> list[int]:
    """What is added to each piece's numbers; one to four are the joined file's own."""
    bases, base = [], 4
    for piece in pieces:
        bases.append(base)
        base += max(piece.objects)
    return bases


def _write_piece(out: "_Writer", pieces: Sequence[Piece], bases: Sequence[int], index: int) -> None:
    """Every object of a piece but its roots; its titles are chained to those of the pieces beside it."""
    piece, base = pieces[index], bases[index]
    first, last = (piece.number(piece.outlines, key) for key in (b"First", b"Last"))
    for number, body in piece.objects.items():
        if number in piece.roots or number == piece.pages:
            continue
        moved = _moved(body, base, piece.outlines)
        if number == first and index > 0:
            before = bases[index - 1] + pieces[index - 1].number(pieces[index - 1].outlines, b"Last")
            moved = _with(moved, b"/Prev %d 0 R" % before)
        if number == last and index < len(pieces) - 1:
            after = bases[index + 1] + pieces[index + 1].number(pieces[index + 1].outlines, b"First")
            moved = _with(moved, b"/Next %d 0 R" % after)
        out.put(base + number, moved)


def _moved(body: bytes, base: int, outlines: int = -1) -> bytes:
    """The object with its references moved; what refers to the piece's outlines refers to the joined ones."""
    stream = STREAM.search(body)
    head, rest = (body, b"") if stream is None else (body[: stream.start()], body[stream.start() :])
    return TOKEN.sub(_mover(base, outlines), head) + rest


def _mover(base: int, outlines: int) -> Callable[[re.Match[bytes]], bytes]:
    def move(found: re.Match[bytes]) -> bytes:
        if found["string"] is not None:
            return found[0]
        number = int(found["number"])
        return b"3 0 R" if number == outlines else b"%d 0 R" % (base + number)

    return move


def _with(body: bytes, entry: bytes) -> bytes:
    return body.replace(b"<<", b"<< " + entry + b" ", 1)


class _Writer:
    def __init__(self, target: BinaryIO) -> None:
        self.target, self.offsets, self.digest = target, dict[int, int](), hashlib.sha256()
        self.at = 0
        self._write(HEAD)

    def _write(self, content: bytes) -> None:
        self.target.write(content)
        self.digest.update(content)
        self.at += len(content)

    def put(self, number: int, body: bytes) -> None:
        self.offsets[number] = self.at
        self._write(b"%d 0 obj\n%s\nendobj\n" % (number, body.strip()))

    def close(self) -> None:
        """The table of where each object stands; numbers that no object has are free."""
        start, size = self.at, max(self.offsets) + 1
        lines = [b"0000000000 65535 f \n"]
        for number in range(1, size):
            offset = self.offsets.get(number)
            lines.append(b"0000000000 65535 f \n" if offset is None else b"%010d 00000 n \n" % offset)
        name = self.digest.hexdigest()[:32].encode()
        self._write(b"xref\n0 %d\n" % size + b"".join(lines))
        trailer = b"trailer\n<< /Size %d /Root 1 0 R /Info 4 0 R /ID [<%s><%s>] >>\n" % (size, name, name)
        self._write(trailer + b"startxref\n%d\n%%%%EOF\n" % start)
