"""The whole main job in one test: from a club's file to the PDF that an exhibitor takes home, on both databases."""

import io
import json
import shutil
import subprocess
from datetime import date

import pypdf
import pytest
from django.core import mail
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client

from ringside.entries.models import Entry
from ringside.people.actions import account_for
from ringside.people.models import Account
from ringside.results.models import Critique
from ringside.shows.models import Show
from scoring.merging import covers_for
from scoring.sheet import read_edit
from tests.entry_files import FORMULA, GOOD, UNKNOWN_BREED, club_export

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]


def sign_in(email: str) -> Client:
    """Signs in as a person does: asks for a code, reads it in the letter, types it."""
    client = Client()
    client.post("/sign-in/", {"email": email})
    letter = mail.outbox[-1]
    assert letter.to == [email]
    code = next(
        line.strip()
        for line in letter.body.splitlines()
        if len(line.strip()) in (6, 7, 8, 9) and " " not in line.strip()
    )
    response = client.post("/sign-in/code/", {"code": code})
    assert response.status_code == 302, response.content
    return client


class Tablet:
    """The judge's page reduced to what it sends."""

    def __init__(self, client: Client, ring: int) -> None:
        self.client, self.address, self.count, self.edits = client, f"/ring/{ring}/edits/", 0, []
        self.day = client.get(f"/ring/{ring}/day/").json()

    def write(self, sheet: str, **fields) -> None:
        made = [self._edit(sheet, field.replace("__", "."), value) for field, value in fields.items()]
        body = json.dumps({"edits": made, "since": 0})
        answer = self.client.post(self.address, body, content_type="application/json").json()
        assert {one["state"] for one in answer["answers"]} == {"applied"}, answer["answers"]
        self.edits += made

    def sign(self, sheet: str) -> None:
        mine = [read_edit(edit) for edit in self.edits if edit["sheet"] == sheet]
        self.write(sheet, signature={"covers": list(covers_for(mine))})

    def _edit(self, sheet, field, value):
        self.count += 1
        return {
            "v": 1, "id": f"t{self.count}", "sheet": sheet, "field": field, "value": value, "replaces": [],
            "made_at": "2026-06-13T09:00:00Z", "device": "tablet",
        }  # fmt: skip


def test_a_clubs_file_becomes_a_judged_class_and_a_critique_on_paper(settings, tmp_path):
    account = account_for(email="secretary@tansymoor.example")
    Account.objects.filter(pk=account.pk).update(runs_site=True)
    office = sign_in("secretary@tansymoor.example")

    # The show, its breeds, judge and ring.
    response = office.post("/office/new/", {
        "name": "Tansymoor Show", "place": "Tansymoor", "rules": "fci", "first_day": "2026-06-13",
        "last_day": "2026-06-14", "entries_close": "2026-05-17",
    })  # fmt: skip
    assert response.url == "/office/tansymoor-show/"
    for breed in ("boxer", "hovawart", "bernese-mountain-dog"):
        office.post("/office/tansymoor-show/appoint/", {
            "breed": breed, "judge_name": "Věra Ostružinová", "judge_email": "judge@tansymoor.example", "ring": "1",
            "day": "2026-06-13",
        })  # fmt: skip

    # The file: good lines are taken, bad ones stay.
    second = ("Bow of Tansymoor", "Bow", "Boxer", "male", "04.02.2023", "T9/23", "999000000700009", *GOOD[0][7:11],
              "other@tansymoor.example", *GOOD[0][12:])  # fmt: skip
    upload = SimpleUploadedFile("export.csv", club_export((*GOOD, second, UNKNOWN_BREED, FORMULA)))
    response = office.post("/office/tansymoor-show/entries/files/", {"file": upload}, follow=True)
    page = response.content.decode()
    assert "did you mean Boxer?" in page
    assert "begins as a spreadsheet&#x27;s formula does" in page
    address = response.redirect_chain[-1][0]
    office.post(f"{address}lines/", {"do": "take-good"})
    assert Entry.objects.count() == 4
    office.post(f"{address}lines/", {"do": "take-good"})
    assert Entry.objects.count() == 4
    office.post("/office/tansymoor-show/entries/number/")
    numbers = list(Entry.objects.order_by("number").values_list("number", flat=True))
    assert numbers == [1, 2, 3, 4]

    # The ring.
    show = Show.objects.get()
    judge = sign_in("judge@tansymoor.example")
    ring = show.rings.get().pk
    tablet = Tablet(judge, ring)
    told = json.dumps(tablet.day)
    assert not any(row[0] in told or row[10] in told for row in GOOD)
    one = next(c for c in tablet.day["classes"] if c["breed"] == "boxer" and c["code"] == "open")
    first, other = (entry["id"] for entry in one["entries"])
    tablet.write(f"entry:{first}", mark__croup=1, mark__topline=0, mark__reach=0, mark__drive=-1)
    tablet.write(f"entry:{first}", choice__bite="undershot",
                 praise__reach=True, remark="Ein Hund mit Ausdruck: Žluťoučký kůň.")  # fmt: skip
    tablet.write(
        f"entry:{other}", mark__croup=3, mark__topline=2, mark__reach=-2, mark__drive=-1, choice__bite="scissor"
    )
    tablet.write(one["sheet"], **{f"grade.{first}": "excellent", f"grade.{other}": "good", "places": [str(first)]})
    advice = judge.get(f"/ring/{ring}/classes/{one['id']}/advice/").json()
    assert advice["proposed"][0]["entry"] == str(first)

    # The office waits for the signature, then publishes.
    publish = f"/office/tansymoor-show/results/{one['id']}/publish/"
    assert office.post(publish).status_code == 409
    for sheet in (one["sheet"], f"entry:{first}", f"entry:{other}"):
        tablet.sign(sheet)
    assert office.post(publish).status_code == 302

    # The exhibitor reads own dogs only, and takes the paper home.
    owner = GOOD[0]
    exhibitor = sign_in(owner[11])
    mine = exhibitor.get("/my-dogs/").content.decode()
    assert owner[0] in mine
    assert second[0] not in mine
    critique = Critique.objects.get(entry_id=first, language="en")
    foreign = Critique.objects.get(entry_id=other, language="en")
    assert exhibitor.get(f"/papers/critiques/{foreign.pk}.pdf").status_code == 404
    assert exhibitor.get(f"/critiques/{foreign.pk}/").status_code == 404
    for language in ("en", "de", "fr", "es"):
        paper = Critique.objects.get(entry_id=first, language=language)
        text = read_paper(exhibitor.get(f"/papers/critiques/{paper.pk}.pdf"), tmp_path)
        assert owner[0] in text
        assert "Věra Ostružinová" in text
        assert "Žluťoučký kůň" in text
        assert " ".join(paper.sentences) in text
    assert "croup slightly steep" in " ".join(critique.sentences)
    assert critique.signed_at.date() >= date(2026, 1, 1)


def read_paper(response, tmp_path) -> str:
    """The text of the paper, in its order; the file itself passes qpdf where that is installed."""
    assert response.headers["Content-Type"] == "application/pdf"
    content = response.content
    if shutil.which("qpdf"):
        file = tmp_path / "paper.pdf"
        file.write_bytes(content)
        subprocess.run(["qpdf", "--check", file], check=True, capture_output=True)
    paper = pypdf.PdfReader(io.BytesIO(content))
    assert len(paper.pages) == 1
    return " ".join(" ".join(page.extract_text() for page in paper.pages).split())
