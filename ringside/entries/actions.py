"""Every change to entries and to the files they come in with."""

from collections.abc import Collection, Mapping, Sequence
from datetime import date
from hashlib import sha256
from typing import Any

from django.db import IntegrityError, transaction

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.core.sentences import listed
from ringside.entries import queries, taking
from ringside.entries.checking import CheckedLine
from ringside.entries.models import EntryFile, EntryLine
from ringside.entries.reading import Recognised, recognise
from ringside.entries.reading.cells import clean
from ringside.entries.reading.dates import STYLES
from ringside.entries.reading.words import FIELDS
from ringside.shows.access import require
from ringside.shows.models import Show

BATCH = 500
WAITING, TAKEN, ASIDE = EntryLine.State.WAITING, EntryLine.State.TAKEN, EntryLine.State.ASIDE


@transaction.atomic
def read_file(*, who: Any, show: Show, name: str, content: bytes, today: date) -> EntryFile:
    """The file, read and checked. The same file is kept once in a show. Raises NotReadable."""
    require(who, show, "take-entries")
    digest = sha256(content).hexdigest()
    known = EntryFile.objects.filter(show=show, digest=digest).first()
    if known is not None:
        return known
    understood = recognise(content)
    file = EntryFile.objects.create(
        show=show, name=_file_name(name), content=content, digest=digest, uploaded_by=who, **_as_understood(understood)
    )
    _write_lines(file, understood)
    _check_again(file, today)
    record(who=who, doing="read-entry-file", show_id=show.pk, about=f"file:{file.pk}", lines=len(understood.rows))
    return file


@transaction.atomic
def read_again(*, who: Any, file: EntryFile, encoding: str, delimiter: str, today: date) -> None:
    """Reads the same file in another encoding or with another separator. Raises NotReadable."""
    file = _locked(who, file)
    if file.lines.exclude(state=WAITING, mended={}).exists():
        raise NotNow("Lines of this file are mended, taken or set aside already, so it stays as it was read.")
    understood = recognise(bytes(file.content), encoding, delimiter)
    for field, value in _as_understood(understood).items():
        setattr(file, field, value)
    file.save()
    file.lines.all().delete()
    _write_lines(file, understood)
    _check_again(file, today)
    record(who=who, doing="read-entry-file-again", show_id=file.show_id, about=f"file:{file.pk}")


@transaction.atomic
def map_columns(*, who: Any, file: EntryFile, columns: Mapping[str, int], date_style: str, today: date) -> None:
    """Which column holds which field, and how dates are read, as a person says it is. Each column holds one field."""
    file = _locked(who, file)
    known = all(field in FIELDS and 0 <= at < len(file.headings) for field, at in columns.items())
    if not known or len(set(columns.values())) < len(columns) or date_style not in STYLES:
        raise NotNow("Each column can hold one field only: choose again.")
    file.columns, file.date_style, file.date_certain = dict(columns), date_style, True
    file.save(update_fields=["columns", "date_style", "date_certain"])
    _check_again(file, today)
    record(who=who, doing="map-columns", show_id=file.show_id, about=f"file:{file.pk}", columns=dict(columns))


@transaction.atomic
def mend_line(*, who: Any, line: EntryLine, texts: Mapping[str, str], today: date) -> EntryLine:
    """Keeps what was typed, right or wrong, and checks the file again, since other lines may depend on this one."""
    file = _locked(who, line.file)
    line = EntryLine.objects.select_for_update().get(pk=line.pk)
    if line.state != WAITING:
        raise NotNow(
            "Line {line} is {state}: it cannot be mended any more.",
            line=line.line,
            state=line.get_state_display(),
        )
    read = queries.texts_of(EntryLine(cells=line.cells), file.columns)
    typed = {field: clean(text) for field, text in texts.items() if field in FIELDS}
    line.mended = {field: text for field, text in typed.items() if text != read.get(field, "")}
    line.save(update_fields=["mended"])
    _check_again(file, today)
    record(who=who, doing="mend-line", show_id=file.show_id, about=f"file:{file.pk} line:{line.line}")
    line.refresh_from_db()
    return line


@transaction.atomic
def take_lines(*, who: Any, file: EntryFile, today: date, numbers: Collection[int] | None = None) -> int:
    """Makes entries of the chosen lines, or of all that may be taken: of all of them or, where one cannot, of none.

    Lines that are taken already are left as they are, so that a second press takes nothing twice. Returns how many
    entries were made.
    """
    file = _locked(who, file)
    _check_again(file, today)
    chosen = [line for line in _waiting(file) if numbers is None or line.line in numbers]
    refused = [line.line for line in chosen if line.standing == EntryLine.Standing.REFUSED]
    if numbers is not None and refused:
        raise NotNow(
            "Nothing was taken: line {lines} must be mended first, or left out.", lines=listed(map(str, refused))
        )
    good = [line for line in chosen if line.standing != EntryLine.Standing.REFUSED]
    _enter(file, good, today)
    _check_again(file, today)
    record(
        who=who, doing="take-entries", show_id=file.show_id, about=f"file:{file.pk}", lines=[one.line for one in good]
    )
    return len(good)


def _enter(file: EntryFile, lines: Sequence[EntryLine], today: date) -> None:
    facts = queries.facts_of(file.show, today)
    checked = {line.line: line for line in queries.check_all(file, _waiting(file), facts)}
    try:
        with transaction.atomic():
            entries = taking.enter(file.show, facts.book, [checked[line.line] for line in lines])
    except IntegrityError:
        raise NotNow("Nothing was taken: somebody else has just entered one of these dogs. Look again.") from None
    for line, entry in zip(lines, entries, strict=True):
        line.entry, line.state = entry, TAKEN
    EntryLine.objects.bulk_update(lines, ["entry", "state"], batch_size=BATCH)


@transaction.atomic
def set_aside(*, who: Any, file: EntryFile, numbers: Collection[int], today: date) -> int:
    """Lines that are not to become entries: doubles, tests, withdrawn forms. They are kept and can be brought back."""
    return _move(who, file, numbers, WAITING, ASIDE, today)


@transaction.atomic
def bring_back(*, who: Any, file: EntryFile, numbers: Collection[int], today: date) -> int:
    return _move(who, file, numbers, ASIDE, WAITING, today)


def _move(who: Any, file: EntryFile, numbers: Collection[int], start: str, end: str, today: date) -> int:
    file = _locked(who, file)
    moved = file.lines.filter(state=start, line__in=numbers).update(state=end)
    _check_again(file, today)
    record(who=who, doing=f"lines-{end}", show_id=file.show_id, about=f"file:{file.pk}", lines=sorted(numbers))
    return moved


@transaction.atomic
def throw_away(*, who: Any, file: EntryFile) -> None:
    """Forgets a file and what was mended in it. Entries that were made of it stay."""
    file = _locked(who, file)
    record(who=who, doing="throw-away-entry-file", show_id=file.show_id, about=f"file:{file.pk}")
    file.delete()


@transaction.atomic
def keep_current(*, file: EntryFile, today: date) -> None:
    """Checks the waiting lines again where the show, its entries or the dogs on record have changed meanwhile."""
    if file.checked_for != queries.stamp_of(file.show):
        _check_again(file, today)


def _locked(who: Any, file: EntryFile) -> EntryFile:
    """The file, once the show is nobody else's for this transaction: entries of one show are made one after another."""
    show = Show.objects.select_for_update().get(pk=file.show_id)
    require(who, show, "take-entries")
    locked = EntryFile.objects.select_for_update().filter(pk=file.pk).first()
    if locked is None:
        raise NotNow("This file has been thrown away meanwhile.")
    locked.show = show
    return locked


def _waiting(file: EntryFile) -> list[EntryLine]:
    return list(file.lines.filter(state=WAITING).order_by("line", "id"))


def _check_again(file: EntryFile, today: date) -> None:
    """Writes into each waiting line what is to be said of it; a file without waiting lines gives up its content."""
    lines = _waiting(file)
    checked: list[CheckedLine] = queries.check_all(file, lines, queries.facts_of(file.show, today))
    changed = []
    for line, found in zip(lines, checked, strict=True):
        findings = [finding.as_json() for finding in found.findings]
        if (line.findings, line.standing) != (findings, found.standing):
            line.findings, line.standing = findings, found.standing
            changed.append(line)
    EntryLine.objects.bulk_update(changed, ["findings", "standing"], batch_size=BATCH)
    EntryFile.objects.filter(pk=file.pk).update(checked_for=queries.stamp_of(file.show))
    if not lines:
        EntryFile.objects.filter(pk=file.pk).update(content=b"")


def _as_understood(understood: Recognised) -> dict[str, Any]:
    return {
        "kind": understood.kind,
        "encoding": understood.encoding,
        "delimiter": understood.delimiter,
        "sheet": understood.sheet[:100],
        "other_sheets": list(understood.other_sheets),
        "date_style": understood.date_style,
        "date_certain": understood.date_certain,
        "heading_line": understood.heading_line,
        "headings": list(understood.headings),
        "columns": understood.columns,
    }


def _write_lines(file: EntryFile, understood: Recognised) -> None:
    lines = [EntryLine(file=file, line=number, cells=list(cells)) for number, cells in understood.rows]
    EntryLine.objects.bulk_create(lines, batch_size=BATCH)


def _file_name(name: str) -> str:
    return clean(name.replace("\\", "/").rsplit("/", 1)[-1])[:200] or "file without a name"
