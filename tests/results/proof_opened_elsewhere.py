"""What goes out of a show, opened and saved by LibreOffice: every cell stays, none is computed, all comes back."""

import csv
import os
import random
from pathlib import Path
from tempfile import TemporaryDirectory

import tablib

from tests.places import libre_office
from tests.results.libre_office import LibreOffice, formulas_in, rows_of
from tests.served import Site, served, unprepared

SECRETARY = "secretary@alderwick.example"
SHOW = ("alderwick", "--by", SECRETARY)
TABLES = ("entries", "results", "awards")
# How texts begin that spreadsheets take for something else: OWASP, "CSV Injection", and what the guard itself adds.
STARTS = ("=1+1", '=HYPERLINK("http://evil.example";"x")', "+1", "-1", "@SUM(A1)", "'=1", "''+a", "'a", "=", "-", "a")
LETTERS = "abc ÄÖß'\"=+-@;,|éłΑЯ🐕"
ROWS = 2000


def main(share: float) -> None:
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "tests.settings")
    program = libre_office()
    if program is None:
        print("Left out: LibreOffice not found (install it, or name it in SOFFICE).")
        return
    with TemporaryDirectory() as one, TemporaryDirectory() as other, TemporaryDirectory() as work:
        office = LibreOffice(program, Path(work))
        print(f"   {texts_come_back(office, Path(work), max(50, round(ROWS * share)))}")
        with served(Path(one)) as here, unprepared(Path(other)) as there:
            print(f"   {a_show_comes_back(office, Path(work), here, there)}")


def texts_come_back(office: LibreOffice, work: Path, rows: int) -> str:
    """Names that would be formulas, guarded as all exports are, through LibreOffice as CSV and as a workbook."""
    from ringside.entries.reading.cells import clean, guarded

    chance = random.Random(rows)
    texts = [
        clean(chance.choice(STARTS) + "".join(chance.choices(LETTERS, k=chance.randint(0, 12)))) for _ in range(rows)
    ]
    table = tablib.Dataset(headers=["Number", "Name"])
    for number, text in enumerate(texts):
        table.append([f"N{number}", guarded(text)])
    files = [work / "names-a.csv", work / "names-b.xlsx"]
    files[0].write_bytes(table.export("csv", delimiter=";").encode("utf-8-sig"))
    files[1].write_bytes(table.export("xlsx", escape=False))
    # The check itself finds a formula where there is one.
    bare = work / "bare.csv"
    with bare.open("w", encoding="utf-8", newline="") as target:
        csv.writer(target, delimiter=";").writerows([["Name"], ["=1+1"]])
    assert [formulas_in(file) for file in office.turned("fods", bare, *files)] == [1, 0, 0]
    for saved in (*office.turned("csv", *files), *office.turned("csv", *office.turned("xlsx", *files))):
        read = [clean(row[1]) for row in rows_of(saved)[1:]]
        assert read == texts, next(pair for pair in zip(read, texts, strict=False) if pair[0] != pair[1])
    return f"{rows} names that could be formulas: none computed, all the same after LibreOffice saved them"


def a_show_comes_back(office: LibreOffice, work: Path, here: Site, there: Site) -> str:
    """The demo show's tables, saved by LibreOffice; its entries from there into an empty installation."""
    here.manage("show_publish", *SHOW)
    folder = work / "out"
    here.manage("show_exports", *SHOW, str(folder))
    books = [folder / f"{name}.xlsx" for name in TABLES]
    plain = {name: rows_of(folder / f"{name}.csv") for name in TABLES}
    for name, saved in zip(TABLES, office.turned("csv", *books), strict=True):
        assert rows_of(saved) == plain[name], f"{name}.xlsx says something else in LibreOffice"
    assert all(formulas_in(file) == 0 for file in office.turned("fods", *books))
    there.manage("prepare")
    there.manage("first_account", SECRETARY)
    days = ("--first-day", "2026-06-13", "--last-day", "2026-06-14", "--entries-close", "2026-05-17")
    found = []
    for kind, saved in (
        ("csv", office.turned("csv", folder / "entries.csv")), ("xlsx", office.turned("xlsx", folder / "entries.xlsx")),
    ):  # fmt: skip
        slug = there.manage("show_new", f"Again {kind}", "--by", SECRETARY, "--rules", "fci", *days).strip()
        there.manage("show_entries", slug, str(saved[0]), "--by", SECRETARY, "--take")
        there.manage("show_numbers", slug, "--by", SECRETARY)
        there.manage("show_exports", slug, "--by", SECRETARY, str(work / slug))
        assert rows_of(work / slug / "entries.csv") == plain["entries"], f"entries that LibreOffice saved as {kind}"
        found.append(len(plain["entries"]) - 1)
    return f"{found[0]} entries saved by LibreOffice as CSV and as a workbook and taken in elsewhere: the same"
