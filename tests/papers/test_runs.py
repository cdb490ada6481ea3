"""All critiques of a show in pieces: in catalogue order, left and taken up again, to the office only."""

import io
import zipfile

import pypdf
import pytest
from django.core.files.storage import default_storage
from django.utils import timezone

from ringside.core.denied import NotNow
from ringside.papers import runs
from ringside.papers.models import PaperRun
from ringside.results.models import Publication
from tests.home.published import published

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


@pytest.fixture
def shown(monkeypatch):
    monkeypatch.setattr(runs, "AT_ONCE", dict.fromkeys(PaperRun.Kind, 1))
    return published()


def start(shown, kind: str = "book", language: str = "de"):
    return runs.start_run(
        by=shown.at.accounts["secretary"], show=shown.at.show, kind=kind, language=language, size="A4",
        site="https://show.example/",
    )  # fmt: skip


def test_each_call_prints_a_piece_and_the_last_puts_them_together(shown):
    run = start(shown)
    told = []
    while not run.is_ready:
        run = runs.advance(run)
        told.append((run.done, run.is_ready))
    assert told == [(1, False), (2, False), (2, True)]
    pages = pypdf.PdfReader(io.BytesIO(run.file.read())).pages
    assert [f"Dog {number}" in page.extract_text() for number, page in enumerate(pages, 1)] == [True, True]
    assert "https://show.example/check/" in pages[0].extract_text()
    assert not any(name.endswith(".part") for name in default_storage.listdir("papers")[1])


def test_the_whole_and_each_dog_in_its_contents_are_titled_in_the_language_of_the_run(shown):
    run = start(shown, language="fr")
    while not run.is_ready:
        run = runs.advance(run)
    book = pypdf.PdfReader(io.BytesIO(run.file.read()))
    assert book.metadata.title == "Rapport de jugement\u00a0: Small Show"
    assert [one.title for one in book.outline] == [f"Rapport de jugement\u00a0: Dog {number}" for number in (1, 2)]


def test_a_zip_holds_a_file_for_each_dog(shown):
    run = start(shown, "zip")
    while not run.is_ready:
        run = runs.advance(run)
    names = zipfile.ZipFile(io.BytesIO(run.file.read())).namelist()
    assert names == ["0001-Dog-1-open-de.pdf", "0002-Dog-2-open-de.pdf"]


def test_a_run_that_was_cut_off_in_the_middle_of_a_piece_is_taken_up_again(shown):
    run = runs.advance(start(shown))
    PaperRun.objects.filter(pk=run.pk).update(busy_until=timezone.now() - runs.BUSY)
    run = runs.advance(PaperRun.objects.get(pk=run.pk))
    assert run.done == 2


def test_two_windows_of_one_run_do_not_print_the_same_piece(shown):
    run = start(shown)
    PaperRun.objects.filter(pk=run.pk).update(busy_until=timezone.now() + runs.BUSY)
    assert runs.advance(run).done == 0


def test_a_run_that_was_cut_off_once_its_pieces_were_joined_is_taken_up_again(shown, monkeypatch):
    run = runs.advance(runs.advance(start(shown)))
    join = runs._join

    def cut_off(run):
        join(run)
        raise OSError("power cut")

    monkeypatch.setattr(runs, "_join", cut_off)
    with pytest.raises(OSError, match="power cut"):
        runs.advance(run)
    monkeypatch.setattr(runs, "_join", join)
    PaperRun.objects.filter(pk=run.pk).update(busy_until=timezone.now() - runs.BUSY)
    run = runs.advance(PaperRun.objects.get(pk=run.pk))
    assert len(pypdf.PdfReader(io.BytesIO(run.file.read())).pages) == 2
    assert not any(name.startswith(f"run-{run.pk}-") for name in default_storage.listdir("papers")[1])


def test_a_window_that_is_behind_prints_nothing_twice(shown):
    run = start(shown)
    behind = PaperRun.objects.get(pk=run.pk)
    runs.advance(run)
    assert runs.advance(behind).done == 1


def test_a_new_run_takes_the_place_of_the_old_one(shown):
    old = start(shown)
    start(shown)
    assert list(PaperRun.objects.filter(pk=old.pk)) == []
    start(shown, language="fr")
    assert PaperRun.objects.count() == 2


def test_without_anything_published_there_is_nothing_to_print(shown):
    Publication.objects.all().delete()
    with pytest.raises(NotNow, match="No critique is published yet"):
        start(shown)


def test_the_page_goes_on_by_itself_and_gives_the_file_to_the_office_only(shown):
    office = shown.client("secretary")
    page = office.post("/papers/show/small/critiques/", {"kind": "book", "language": "en"}).url
    assert "0 of 2 critiques are printed" in office.get(page).content.decode()
    for _ in range(3):
        answer = office.post(f"{page}advance/", headers={"HX-Request": "true"})
    assert "Take the file" in answer.content.decode()
    assert "<html" not in answer.content.decode()
    file = office.get(f"{page}file/")
    assert b"".join(file.streaming_content).startswith(b"%PDF")
    assert file["Content-Disposition"] == 'attachment; filename="critiques-small-en.pdf"'
    assert (file["Content-Type"], file["X-Content-Type-Options"]) == ("application/pdf", "nosniff")
    assert file["Content-Security-Policy"] == "sandbox; default-src 'none'"
    for name in ("ada", "stranger"):
        assert shown.client(name).get(f"{page}file/").status_code == 404
