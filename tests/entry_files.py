"""Entry files of our own invention for tests, with the faults that clubs' files have."""

# ruff: noqa: E501

import csv
import io

HEADINGS = (
    "Name of dog", "Call name", "Breed", "Sex", "Date of birth", "Studbook no.", "Microchip", "Sire", "Dam", "Breeder",
    "Owner", "E-mail", "Class", "Titles", "Certificates", "Neutered",
)  # fmt: skip
GOOD = [
    ("Arrow of Tansymoor", "Arrow", "Boxer", "male", "03.02.2023", "T1/23", "999000000700001", "Sol", "Luna", "Fay Quill",
     "Zdeněk Řepa", "zdenek@tansymoor.example", "open", "", "", "no"),
    ("Βέλος της Αυγής", "Velos", "Hovawart", "female", "11.04.2025", "T2/25", "999000000700002", "Sol", "Luna",
     "Fay Quill", "Łucja Żuk", "lucja@tansymoor.example", "junior", "", "", "no"),
    ("Быстрая Стрела", "Strela", "Bernese Mountain Dog", "male", "20.10.2025", "T3/25", "999000000700003", "Sol", "Luna",
     "Fay Quill", "Óscar Peñalva", "oscar@tansymoor.example", "puppy", "", "", "no"),
]  # fmt: skip
UNKNOWN_BREED = (
    "Misty of Tansymoor", "Misty", "Boxxer", "female", "05.05.2022", "T4/22", "999000000700004", "Sol", "Luna",
    "Fay Quill", "Ida Nørrelund", "ida@tansymoor.example", "open", "", "", "no",
)  # fmt: skip
FORMULA = (
    '=HYPERLINK("http://example.org","x")', "Trick", "Boxer", "male", "05.06.2022", "T5/22", "999000000700005", "Sol",
    "Luna", "Fay Quill", "Ida Nørrelund", "ida@tansymoor.example", "open", "", "", "no",
)  # fmt: skip


def club_export(rows=(*GOOD, UNKNOWN_BREED, FORMULA), delimiter: str = ";", encoding: str = "utf-8-sig") -> bytes:
    target = io.StringIO()
    csv.writer(target, delimiter=delimiter).writerows([HEADINGS, *rows])
    return target.getvalue().encode(encoding, errors="replace")
