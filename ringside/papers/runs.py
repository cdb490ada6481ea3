"""Printing all critiques of a show without one long answer: each call prints a piece, the last joins them.

No process works in the background. A run goes on while somebody looks at its page, rests when they leave, and is taken
up where it was; nothing that the ring writes waits for it, since no transaction is open while a piece is printed.
"""

import io
import shutil
import tempfile
import zipfile
from datetime import timedelta

from django.core.files.base import ContentFile, File
from django.core.files.storage import default_storage
from django.db import transaction
from django.db.models import Q
from django.utils import timezone

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.core.exports import plain_name
from ringside.papers.build import check_address, paper_for
from ringside.papers.critique import CritiquePaper, book_of_critiques, critique_pdf, titled
from ringside.papers.joining import join
from ringside.papers.models import PaperRun
from ringside.people.models import Account
from ringside.results.models import Critique
from ringside.shows.access import require
from ringside.shows.appointed import appointments_of
from ringside.shows.models import Show

# About a second's work each: a single file's critiques share their fonts and the drawn dog, zipped ones do not.
AT_ONCE = {PaperRun.Kind.BOOK: 40, PaperRun.Kind.ZIP: 15}
BUSY = timedelta(seconds=60)


@transaction.atomic
def start_run(*, by: Account, show: Show, kind: str, language: str, size: str, site: str) -> PaperRun:
    """A new run over what is published now. The earlier one of the same kind and language goes, file and all."""
    require(by, show, "see-office")
    found = Critique.objects.published().filter(entry__show=show, language=language)
    found = found.order_by("entry__number", "entry_id")
    ids = list(found.values_list("pk", flat=True))
    if not ids:
        raise NotNow("No critique is published yet. Publish a class first.")
    for old in PaperRun.objects.filter(show=show, kind=kind, language=language):
        _throw_away(old)
    record(who=by, doing="print-critiques", show_id=show.pk, kind=kind, language=language, critiques=len(ids))
    return PaperRun.objects.create(
        show=show, kind=PaperRun.Kind(kind), language=language, size=size, site=site, critiques=ids, started_by=by
    )


def advance(run: PaperRun) -> PaperRun:
    """Prints the next piece, or joins the pieces when all are printed; does nothing while another call does."""
    now = timezone.now()
    is_free = Q(busy_until=None) | Q(busy_until__lt=now)
    mine = PaperRun.objects.filter(is_free, pk=run.pk, done=run.done, file="").update(busy_until=now + BUSY)
    if mine:
        if run.done < run.total:
            _print_piece(run)
        else:
            _join(run)
        PaperRun.objects.filter(pk=run.pk).update(busy_until=None, done=run.done, file=run.file.name)
        if run.is_ready:
            # Only now: cut off before, the pieces are joined once more.
            _throw_away_pieces(run)
    run.refresh_from_db()
    return run


def _print_piece(run: PaperRun) -> None:
    ids = run.critiques[run.done : run.done + AT_ONCE[PaperRun.Kind(run.kind)]]
    of_class = "entry__show_class__"
    found_now = Critique.objects.published().select_related(
        "judge", "entry__dog", f"{of_class}judged_by", f"{of_class}show_breed__show", f"{of_class}show_breed__judge"
    )
    critiques = found_now.prefetch_related(appointments_of(f"{of_class}show_breed__")).in_bulk(ids)
    # One that is gone since the run began is left out.
    found = [critiques[pk] for pk in ids if pk in critiques]
    if found:
        _keep(_piece(run, run.done), _book(run, found) if run.kind == PaperRun.Kind.BOOK else _zipped(run, found))
    run.done += len(ids)


def _book(run: PaperRun, critiques: list[Critique]) -> bytes:
    papers = [_paper(run, critique) for critique in critiques]
    return book_of_critiques(papers, titled(papers[0], run.show.name), run.size)


def _zipped(run: PaperRun, critiques: list[Critique]) -> bytes:
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w") as archive:
        for critique in critiques:
            entry = critique.entry
            plain = plain_name(entry.dog.name, 60)
            # A dog in several classes has one number and a critique for each.
            name = f"{entry.number or 0:04}-{plain}-{entry.show_class.code}-{critique.language}.pdf"
            archive.writestr(name, critique_pdf(_paper(run, critique), run.size))
    return target.getvalue()


def _paper(run: PaperRun, critique: Critique) -> CritiquePaper:
    return paper_for(critique, check_address(critique, run.site))


def _join(run: PaperRun) -> None:
    """The pieces as one file."""
    names = [name for name in _pieces(run) if default_storage.exists(name)]
    with tempfile.TemporaryFile() as target:
        if run.kind == PaperRun.Kind.BOOK:
            join([_read(name) for name in names], target, run.language)
        else:
            _join_zips(names, target)
        target.seek(0)
        run.file.save(f"critiques-{run.show.slug}-{run.language}-{run.pk}.{run.suffix}", File(target), save=False)


def _join_zips(names: list[str], target: object) -> None:
    with zipfile.ZipFile(target, "w") as whole:  # type: ignore[call-overload]
        for name in names:
            with default_storage.open(name) as file, zipfile.ZipFile(file) as piece:
                for member in piece.infolist():
                    with piece.open(member) as source, whole.open(member.filename, "w") as copy:
                        shutil.copyfileobj(source, copy)


def _pieces(run: PaperRun) -> list[str]:
    return [_piece(run, start) for start in range(0, run.total, AT_ONCE[PaperRun.Kind(run.kind)])]


def _piece(run: PaperRun, start: int) -> str:
    return f"papers/run-{run.pk}-{start:05}.part"


def _keep(name: str, content: bytes) -> None:
    """In the place of what a call that was cut off may have left."""
    default_storage.delete(name)
    default_storage.save(name, ContentFile(content))


def _read(name: str) -> bytes:
    with default_storage.open(name) as file:
        content: bytes = file.read()
    return content


def _throw_away_pieces(run: PaperRun) -> None:
    for name in _pieces(run):
        default_storage.delete(name)


def _throw_away(run: PaperRun) -> None:
    _throw_away_pieces(run)
    if run.file:
        default_storage.delete(run.file.name)
    run.delete()
