"""The commands of a show's office: the pages' rights and refusals, what is wrong named, nothing half done."""

import io
from datetime import time

import pytest
from django.core.management import CommandError, call_command

from ringside.entries.models import Entry
from ringside.people.models import Account
from ringside.results.models import Publication
from ringside.shows.models import Appointment, Show, ShowBreed
from ringside.timetable.models import StartTime
from ringside.timetable.queries import slots_of
from tests.entry_files import GOOD, UNKNOWN_BREED, club_export
from tests.papers import reading
from tests.results.writing import judge_and_sign
from tests.shows_for_tests import small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]
BY = ("--by", "secretary@small.example")
DAYS = ("--rules", "fci", "--first-day", "2026-06-13", "--last-day", "2026-06-14")
JUDGES = """Breed;Variety;Part;Judge;Email;Ring;Day
Boxer;;;Jo Finch;jo@small.example;1;2026-06-13
Boxer;;bitches open;Kim Wren;kim@small.example;2;2026-06-13
Dachshund;miniature-long-haired;;Kim Wren;kim@small.example;2;2026-06-13
"""


@pytest.fixture
def at():
    return small_show()


def run(name: str, *arguments: object) -> str:
    said = io.StringIO()
    call_command(name, *map(str, arguments), stdout=said)
    return said.getvalue()


def refused(name: str, *arguments: object) -> str:
    with pytest.raises(CommandError) as error:
        run(name, *arguments)
    return str(error.value)


def test_a_show_is_started_by_whoever_may_start_shows():
    Account.objects.create_user("clerk@small.example")
    boss = Account.objects.create_user("boss@small.example")
    boss.runs_site = True
    boss.save()
    assert "may not start shows" in refused("show_new", "Lea Show", "--by", "clerk@small.example", *DAYS)
    slug = run("show_new", "Lea Show", "--by", "boss@small.example", *DAYS, "--entries-close", "2026-05-30")
    assert slug.strip() == "lea-show"
    assert sorted(Show.objects.get(slug="lea-show").roles.values_list("kind", flat=True)) == ["owner", "secretary"]
    assert "There is a show of this name already" in refused(
        "show_new", "Lea Show", "--by", "boss@small.example", *DAYS
    )


def test_a_wrong_day_is_named_with_its_field():
    boss = Account.objects.create_user("boss@small.example")
    boss.runs_site = True
    boss.save()
    days = ("--rules", "fci", "--first-day", "2026-06-13", "--last-day", "2026-06-12")
    assert refused("show_new", "Lea Show", "--by", boss.email, *days) == (
        "Last day: The last day lies before the first."
    )


def test_nobody_does_what_the_pages_would_not_let_them(at):
    assert "has no account here" in refused("show_numbers", "small", "--by", "nobody@small.example")
    assert "no role in the show" in refused("show_numbers", "small", "--by", "stranger@small.example")
    assert "does not let you" in refused("show_numbers", "small", "--by", "steward@small.example")
    assert refused("show_numbers", "smal", *BY) == "There is no show smal here. The shows here: small."


def test_judges_are_appointed_from_a_file_with_parts_and_varieties(at, tmp_path):
    file = tmp_path / "judges.csv"
    file.write_text(JUDGES, "utf-8")
    assert run("show_appoint", "small", file, *BY).splitlines()[0] == "3 appointments for Small Show."
    boxer = ShowBreed.objects.get(show=at.show, breed="boxer")
    assert boxer.judge is not None
    assert boxer.judge.name == "Jo Finch"
    part = Appointment.objects.get(show_breed=boxer)
    assert (part.sex, part.code, str(part.judge)) == ("bitch", "open", "Kim Wren")
    variety = ShowBreed.objects.get(show=at.show, breed="dachshund")
    assert (variety.variety, str(variety.ring)) == ("miniature-long-haired", "Ring 2")


def test_one_wrong_line_of_judges_appoints_nobody(at, tmp_path):
    file = tmp_path / "judges.csv"
    file.write_text(
        JUDGES + "Meadow Hound;;;Al Rook;al@small.example;1;2026-06-13\nBoxer;;;Al;al@x.example;1;2027-01-01\n"
    )
    said = refused("show_appoint", "small", file, *BY)
    assert "Line 5: There is no standard of a breed Meadow Hound here." in said
    assert "Line 6: Day: The show runs from" in said
    assert said.endswith("Nothing was appointed.")
    assert not Appointment.objects.exists()
    file.write_text("Breed;Judge\nBoxer;Al\n")
    assert refused("show_appoint", "small", file, *BY).startswith("This file has no column email, ring, day.")


def test_entries_are_looked_at_first_and_taken_when_asked(at, tmp_path):
    file = tmp_path / "club.csv"
    file.write_bytes(club_export((*GOOD, UNKNOWN_BREED)))
    before = Entry.objects.count()
    said = run("show_entries", "small", file, *BY)
    assert said.splitlines()[0] == "Of 4 lines 0 are taken, 0 set aside, 3 may be taken, 1 are to be mended."
    assert "Line 5, Misty of Tansymoor: " in said
    assert "did you mean Boxer?" in said
    assert Entry.objects.count() == before
    assert run("show_entries", "small", file, *BY, "--take").startswith("3 entries made. Of 4 lines 3 are taken")
    assert run("show_entries", "small", file, *BY, "--take").startswith("0 entries made.")
    assert Entry.objects.count() == before + 3
    assert run("show_numbers", "small", *BY).strip() == "3 entries have their number now; the last is 7."
    assert "Every entry has its number already" in refused("show_numbers", "small", *BY)


def test_what_is_no_table_is_refused_with_what_to_do(at, tmp_path):
    file = tmp_path / "club.pdf"
    file.write_bytes(b"%PDF-1.4")
    assert refused("show_entries", "small", file, *BY) == (
        "This is a PDF, which has no table to read. Ask for the list as CSV or .xlsx."
    )
    assert "No such file" in refused("show_entries", "small", tmp_path / "nothing.csv", *BY)


def test_a_variety_that_an_entry_brings_in_has_the_judge_of_its_breed(at, tmp_path):
    judges, file = tmp_path / "judges.csv", tmp_path / "club.csv"
    judges.write_text("Breed;Judge;Email;Ring;Day\nDachshund;Jo Finch;jo@small.example;1;2026-06-13\n", "utf-8")
    run("show_appoint", "small", judges, *BY)
    row = list(GOOD[0])
    text = (
        club_export([row])
        .decode("utf-8-sig")
        .replace("Breed;", "Breed;Variety;")
        .replace(";Boxer;", ";Dachshund;Standard wire-haired;")
    )
    file.write_bytes(text.encode())
    run("show_entries", "small", file, *BY, "--take")
    variety = ShowBreed.objects.get(show=at.show, breed="dachshund", variety="standard-wire-haired")
    assert (str(variety.judge), str(variety.ring), variety.day) == ("Jo Finch", "Ring 1", at.show.first_day)


def test_the_timetable_names_hours_and_what_cannot_be_kept(at):
    # The first owner has a dog before each of the two judges, who both could begin at nine.
    said = run("show_timetable", "small", *BY, "--rest", "0", "--seconds", "0")
    assert said.splitlines() == [
        "2026-06-13  Ring 1  judge", "  09:03-09:12  Boxer (3)", "2026-06-13  Ring 2  other-judge",
        "  09:00-09:03  Hovawart (1)",
    ]  # fmt: skip
    assert not StartTime.objects.exists()
    tight = run("show_timetable", "small", *BY, "--rest", "0", "--end", "09:09", "--seconds", "0")
    assert "Boxer" in tight
    assert "One exhibitor has dogs in" in tight
    short = run("show_timetable", "small", *BY, "--rest", "0", "--end", "09:05")
    assert "Boxer finds no room on its judge's day: 9 minutes are asked." in short
    assert "HH:MM" in refused("show_timetable", "small", *BY, "--start", "nine")


def test_a_timetable_is_kept_when_asked_and_what_is_planned_stays(at):
    StartTime.objects.create(show_breed=at.show_class.show_breed, at=time(10, 15))
    said = run("show_timetable", "small", *BY, "--seconds", "0", "--keep").splitlines()
    assert "  10:15-10:24  Boxer (3)" in said
    assert said[-1] == "1 times written down."
    assert [slot.at for slot in slots_of(at.show)] == [time(10, 15), time(9)]
    assert "does not let you" in refused("show_timetable", "small", "--by", "assistant@small.example", "--keep")


def test_best_of_breed_waits_for_all_parts_of_its_breed(at):
    breed = at.show_class.show_breed
    Appointment.objects.create(show_breed=breed, sex="dog", judge=at.other_class.show_breed.judge, ring=at.other_ring)
    said = run("show_timetable", "small", *BY, "--rest", "0", "--seconds", "0")
    ends = {line.split("  ")[2]: line.split("  ")[1].split("-") for line in said.splitlines() if line[:2] == "  "}
    assert ends["Boxer, best of breed"][0] >= ends["Boxer, dogs (3)"][1]


def test_everything_signed_is_published_and_the_rest_is_named(at):
    judge_and_sign(at)
    said = run("show_publish", "small", *BY)
    assert said.splitlines()[0] == "1 classes published, 1 wait."
    assert "  Hovawart, open class, dogs: This class cannot be published yet. Missing: " in said
    assert "Boxer: These awards cannot be published yet." in said
    assert [one.show_class for one in Publication.objects.all()] == [at.show_class]


def test_papers_and_exports_fill_a_new_folder_or_none(at, tmp_path):
    judge_and_sign(at)
    run("show_publish", "small", *BY)
    told = run("show_exports", "small", *BY, tmp_path / "out")
    assert "results.xlsx" in told
    assert len(list((tmp_path / "out").iterdir())) == 11
    assert "is there already; nothing was overwritten." in refused("show_exports", "small", *BY, tmp_path / "out")
    said = run("show_papers", "small", *BY, tmp_path / "papers", "--site", "https://small.example")
    assert said.splitlines()[0] == "No critique is published yet. Publish a class first."
    names = {file.name for file in (tmp_path / "papers").iterdir()}
    assert names >= {"catalogue.pdf", "judges-book.pdf", "number-cards.pdf", "results.pdf"}
    run("show_papers", "small", *BY, tmp_path / "de", "--site", "https://small.example", "--language", "de")
    assert "Offene Klasse, Rüden" in reading.text((tmp_path / "de" / "results.pdf").read_bytes())
    assert sorted(file.name for file in tmp_path.iterdir()) == ["de", "out", "papers"]
