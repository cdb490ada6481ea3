"""A club's file in the office: every problem in words, good lines taken once, bad ones kept for mending."""

import io
from datetime import date
from pathlib import Path

import openpyxl
import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client

from ringside.core.denied import Denied, NotNow
from ringside.core.sentences import SENTENCES, sentence
from ringside.dogs.models import Dog
from ringside.entries import actions, by_hand, lists
from ringside.entries.models import Entry, EntryFile, EntryLine
from ringside.entries.numbering import number_entries
from ringside.entries.reading import recognise
from ringside.shows.models import ShowClass
from tests.entry_files import FORMULA, GOOD, HEADINGS, UNKNOWN_BREED, club_export
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]

TODAY = date(2026, 5, 20)
SAMPLES = Path(__file__).resolve().parents[3] / "shared" / "samples"


@pytest.fixture
def at() -> SmallShow:
    return small_show()


def read(at: SmallShow, content: bytes) -> EntryFile:
    return actions.read_file(who=at.accounts["assistant"], show=at.show, name="x.csv", content=content, today=TODAY)


def take(at: SmallShow, file: EntryFile, numbers=None) -> int:
    return actions.take_lines(who=at.accounts["assistant"], file=file, today=TODAY, numbers=numbers)


def codes(file: EntryFile, line: int, severity: str = "refuses") -> set[str]:
    found = file.lines.get(line=line).findings
    return {finding["code"] for finding in found if finding["severity"] == severity}


def changed(**cells: str) -> tuple[str, ...]:
    """A good line with some cells changed, by heading."""
    row = dict(zip(HEADINGS, GOOD[0], strict=True))
    return tuple({**row, **{name.replace("_", " "): text for name, text in cells.items()}}.values())


def test_good_lines_become_entries_and_bad_ones_wait(at):
    file = read(at, club_export())
    assert take(at, file) == 3
    assert Entry.objects.filter(lines__file=file).count() == 3
    assert sorted(file.lines.filter(state="waiting").values_list("line", flat=True)) == [5, 6]
    assert codes(file, 5) == {"breed-unknown"}
    assert codes(file, 6) == {"formula-text"}


def test_taking_twice_takes_once(at):
    file = read(at, club_export())
    before = Entry.objects.count()
    take(at, file)
    assert take(at, file) == 0
    assert Entry.objects.count() == before + 3


def test_the_same_file_is_kept_once(at):
    assert read(at, club_export()) == read(at, club_export())
    assert EntryFile.objects.count() == 1


def test_choosing_a_bad_line_takes_nothing(at):
    file = read(at, club_export())
    before = Entry.objects.count()
    with pytest.raises(NotNow, match="Nothing was taken: line 5"):
        take(at, file, [2, 3, 5])
    assert Entry.objects.count() == before


@pytest.mark.parametrize(
    ("cells", "code"),
    [
        ({"Owner": ""}, "owner-missing"),
        ({"Name_of_dog": ""}, "name-missing"),
        ({"Breed": "Boxxer"}, "breed-unknown"),
        ({"Sex": "?"}, "sex-unknown"),
        ({"Date_of_birth": "31.02.2023"}, "date-unreadable"),
        ({"Date_of_birth": "20.06.2026"}, "not-born-yet"),
        ({"Microchip": "99900000070000"}, "chip-wrong-length"),
        ({"Microchip": "2.5E+14"}, "chip-shortened-by-spreadsheet"),
        ({"Class": "junior"}, "too-old"),
        ({"Class": "veteran"}, "too-young"),
        ({"Class": "working"}, "certificate-missing"),
        ({"Class": "champion"}, "title-missing"),
        ({"Class": "opeen"}, "class-unknown"),
        ({"Class": "supreme"}, "class-not-offered"),
        ({"E-mail": "not-an-address"}, "email-invalid"),
        ({"Neutered": "yes"}, "neutered-not-allowed"),
        ({"Owner": "@SUM(A1)"}, "formula-text"),
    ],
)
def test_each_problem_is_named_and_has_its_sentence(at, cells, code):
    file = read(at, club_export([changed(**cells)]))
    assert code in codes(file, 2)
    finding = next(one for one in file.lines.get(line=2).findings if one["code"] == code)
    assert "…" not in sentence(finding)
    assert take(at, file) == 0


def test_a_dog_one_day_too_young_is_refused_and_one_day_older_is_not(at):
    # Source: the federation's class list, as published by a member: open class from 15 months, on the day of the show.
    young, old = (
        changed(Date_of_birth="14.03.2025"),
        changed(
            Date_of_birth="13.03.2025", Microchip="999000000700012", Name_of_dog="Older", **{"Studbook_no.": "T8/25"}
        ),
    )
    file = read(at, club_export([young, old]))
    assert "too-young" in codes(file, 2)
    assert codes(file, 3) == set()


def test_all_problems_of_a_line_are_said_at_once(at):
    file = read(at, club_export([changed(Owner="", Breed="Boxxer", Microchip="1", Sex="?")]))
    assert codes(file, 2) >= {"owner-missing", "breed-unknown", "chip-wrong-length", "sex-unknown"}


def test_every_finding_of_the_checks_has_a_sentence(at):
    file = read(at, club_export())
    for line in file.lines.all():
        assert {finding["code"] for finding in line.findings} <= set(SENTENCES)


def test_doubles_are_seen_in_the_file_and_against_what_is_entered(at):
    file = read(at, club_export([GOOD[0], GOOD[0], changed(Name_of_dog="Other")]))
    assert "double" in codes(file, 3)
    assert "chip-twice-in-file" in codes(file, 4)
    actions.set_aside(who=at.accounts["assistant"], file=file, numbers=[3, 4], today=TODAY)
    assert take(at, file) == 1
    again = read(at, club_export([GOOD[0], changed(Name_of_dog="Elsewhere", Microchip="999000000700031")]))
    assert "already-entered" in codes(again, 2)


def test_lost_letters_warn_and_do_not_refuse(at):
    file = read(at, club_export([changed(Owner="V?ra ?eleny")]))
    assert "letters-lost" in codes(file, 2, "warns")
    assert take(at, file) == 1


def test_a_mended_line_can_be_taken_and_a_wrong_mend_is_kept_as_typed(at):
    file = read(at, club_export([UNKNOWN_BREED]))
    line = file.lines.get()
    texts = {"breed": "Boxx", "owner": "Ida Nørrelund"}
    line = actions.mend_line(who=at.accounts["assistant"], line=line, texts=texts, today=TODAY)
    assert (line.standing, line.mended["breed"]) == ("refused", "Boxx")
    line = actions.mend_line(who=at.accounts["assistant"], line=line, texts={"breed": "boxer"}, today=TODAY)
    assert line.standing in ("good", "warned")
    assert take(at, file) == 1


def test_columns_can_be_mapped_another_way(at):
    file = read(at, club_export([GOOD[0]]))
    columns = {**file.columns, "sire": file.columns["dam"], "dam": file.columns["sire"]}
    actions.map_columns(who=at.accounts["assistant"], file=file, columns=columns, date_style="dd.mm.yyyy", today=TODAY)
    take(at, EntryFile.objects.get())
    dog = Dog.objects.get(name=GOOD[0][0])
    assert (dog.sire, dog.dam) == ("Luna", "Sol")


def test_a_column_cannot_hold_two_fields_at_once(at):
    file = read(at, club_export([GOOD[0]]))
    with pytest.raises(NotNow):
        actions.map_columns(
            who=at.accounts["assistant"],
            file=file,
            columns={"name": 0, "sire": 0},
            date_style="dd.mm.yyyy",
            today=TODAY,
        )


def test_reading_again_after_a_line_was_taken_is_not_possible(at):
    file = read(at, club_export())
    take(at, file)
    with pytest.raises(NotNow):
        actions.read_again(who=at.accounts["assistant"], file=file, encoding="cp1250", delimiter=";", today=TODAY)


@pytest.mark.parametrize("role", ["steward", "writer", "judge"])
def test_only_the_office_takes_entries(at, role):
    with pytest.raises(Denied):
        actions.read_file(who=at.accounts[role], show=at.show, name="x", content=club_export(), today=TODAY)


def test_numbers_run_from_1_without_gaps_and_stay(at):
    Entry.objects.update(number=None)
    take(at, read(at, club_export()))
    number_entries(who=at.accounts["secretary"], show=at.show)
    first = dict(Entry.objects.values_list("pk", "number"))
    assert sorted(first.values()) == list(range(1, len(first) + 1))
    by_hand.enter(who=at.accounts["secretary"], show=at.show, texts=hand(), today=TODAY)
    number_entries(who=at.accounts["secretary"], show=at.show)
    second = dict(Entry.objects.values_list("pk", "number"))
    assert {pk: second[pk] for pk in first} == first
    assert sorted(second.values()) == list(range(1, len(second) + 1))


def hand(**more: str) -> dict[str, str]:
    return {
        "name": "Typed of Heath", "breed": "Boxer", "sex": "dog", "born": "01.02.2022", "chip": "999000000700077",
        "owner": "Odo", "email": "odo@small.example", "class": "open", **more,
    }  # fmt: skip


def test_an_entry_by_hand_is_checked_like_a_line(at):
    entry = by_hand.enter(who=at.accounts["secretary"], show=at.show, texts=hand(), today=TODAY)
    assert entry.show_class == ShowClass.objects.get(pk=at.show_class.pk)
    with pytest.raises(NotNow):
        by_hand.enter(who=at.accounts["secretary"], show=at.show, texts=hand(), today=TODAY)
    with pytest.raises(NotNow):
        by_hand.enter(who=at.accounts["secretary"], show=at.show, texts=hand(owner=""), today=TODAY)


def test_what_goes_out_comes_back_in_unchanged(at):
    take(at, read(at, club_export()))
    for kind in ("csv", "xlsx"):
        content = lists.written(at.show, lists.Asked(), kind)
        found = recognise(content)
        names = {cells[found.columns["name"]] for _, cells in found.rows}
        assert names >= {row[0] for row in GOOD}
        assert len(found.rows) == Entry.objects.count()
    assert openpyxl.load_workbook(io.BytesIO(content)).active.cell(1, 2).value == "Name of dog"


def test_no_exported_cell_starts_a_formula(at):
    Dog.objects.filter(entries=at.entries[0]).update(name="=1+1", sire="@x", dam="-2", breeder="+3")
    text = lists.written(at.show, lists.Asked(), "csv").decode("utf-8-sig")
    assert "'=1+1" in text
    assert not any(cell.startswith(("=", "+", "-", "@")) for line in text.splitlines() for cell in line.split(";"))


def test_the_list_costs_the_same_number_of_queries_however_long(at, django_assert_max_num_queries):
    client = Client()
    client.force_login(at.accounts["secretary"])
    take(at, read(at, club_export([changed(Name_of_dog=f"Dog {n}", Microchip=f"9990000008{n:05}") for n in range(60)])))
    with django_assert_max_num_queries(20):
        page = client.get("/office/small/entries/?q=dog&order=name")
    assert page.status_code == 200


@pytest.mark.parametrize(
    "query", ["q=%00", "q=" + "x" * 3000, "page=999999999999", "page=-1", "order=;drop", "breed=<x>", "q=' or 1=1"]
)
def test_the_list_takes_any_question(at, query):
    client = Client()
    client.force_login(at.accounts["secretary"])
    assert client.get(f"/office/small/entries/?{query}").status_code == 200


@pytest.mark.parametrize(
    ("content", "words"),
    [(b"", "empty"), (b"%PDF-1.4", "PDF"), (b"a;b\n" * 1_500_000, "larger than"), (b"a;b\x00;c\n1;2;3", "zero bytes")],
)
def test_an_upload_that_cannot_be_read_says_so_on_the_page(at, content, words):
    client = Client()
    client.force_login(at.accounts["secretary"])
    file = SimpleUploadedFile("../../etc/list.csv", content)
    page = client.post("/office/small/entries/files/", {"file": file}, follow=True).content.decode()
    assert words in page
    assert EntryFile.objects.count() == 0


def test_a_file_of_another_show_is_not_found(at):
    file = read(at, club_export())
    client = Client()
    client.force_login(at.accounts["stranger"])
    assert client.get(f"/office/small/entries/files/{file.pk}/").status_code == 404
    assert client.post(f"/office/small/entries/files/{file.pk}/lines/", {"do": "take-good"}).status_code == 404


def test_formula_text_is_shown_as_text(at):
    client = Client()
    client.force_login(at.accounts["secretary"])
    file = read(at, club_export([FORMULA, changed(Name_of_dog="<script>alert(1)</script>")]))
    page = client.get(f"/office/small/entries/files/{file.pk}/").content.decode()
    assert "<script>alert" not in page
    assert "begins as a spreadsheet&#x27;s formula does" in page


@pytest.mark.skipif(not SAMPLES.is_dir(), reason="the sample files lie beside the repository, where they are given")
@pytest.mark.parametrize(
    ("name", "encoding", "delimiter", "style", "lines", "refused"),
    [
        ("entries-club-export.csv", "utf-8", ";", "dd.mm.yyyy", 64, 19),
        ("entries-old-spreadsheet.csv", "cp1252", ",", "dd/mm/yyyy", 48, None),
    ],
)
def test_the_sample_files_are_understood(at, name, encoding, delimiter, style, lines, refused):
    file = read(at, (SAMPLES / name).read_bytes())
    assert (file.encoding, file.delimiter, file.date_style) == (encoding, delimiter, style)
    assert file.lines.count() == lines
    bad = file.lines.filter(standing=EntryLine.Standing.REFUSED).count()
    assert refused in (None, bad)
    assert take(at, file) == lines - bad
