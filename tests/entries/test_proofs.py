"""Proofs are hostile files until seen to be none, reach only who may, and are ticked off with who and when."""

import io
import zlib
from datetime import date

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.http import Http404
from django.test import Client
from PIL import Image

from ringside.core.denied import Denied, NotNow
from ringside.core.intake import NotTaken, take
from ringside.core.models import AuditLine
from ringside.entries import lists
from ringside.entries.models import EntryRequest, Proof, ProofTick
from ringside.entries.proofs import actions
from ringside.entries.proofs.access import access_proof, own_proof
from ringside.entries.proofs.intake import MOST_BYTES, PROOF
from ringside.home.forgetting import forget_contact
from ringside.home.kept import kept_of
from ringside.shows.models import ShowClass
from tests.shows_for_tests import SmallShow, small_show

pytestmark = [pytest.mark.django_db, pytest.mark.both_databases]

PDF = b"%PDF-1.4\n1 0 obj<<>>endobj\ntrailer<<>>\n%%EOF\n"


@pytest.fixture
def at(settings, tmp_path) -> SmallShow:
    settings.MEDIA_ROOT = tmp_path
    at = small_show()
    at.show.entries_open = date(2026, 4, 1)
    at.show.save()
    champions = ShowClass.objects.create(show_breed=at.show_class.show_breed, sex="dog", code="champion")
    at.entries[0].show_class = champions
    at.entries[0].save()
    return at


def send(at: SmallShow, who: str = "ada", content: bytes = PDF, need: str = "title") -> Proof:
    return actions.send_proof(who=at.accounts[who], show=at.show, dog=at.entries[0].dog, need=need, content=content)


def page(at: SmallShow, who: str) -> Client:
    client = Client()
    client.force_login(at.accounts[who])
    return client


def picture(kind: str, size: tuple[int, int] = (300, 200), **more) -> bytes:
    target = io.BytesIO()
    Image.new("RGB", size, "white").save(target, kind, **more)
    return target.getvalue()


def test_a_pdf_is_kept_as_it_is_and_a_picture_is_drawn_again():
    assert take(PDF, PROOF).content == PDF
    place = Image.Exif()
    place[0x010E] = "SECRET PLACE"
    for sent in (picture("JPEG", exif=place), picture("PNG") + b"<script>alert(1)</script>"):
        taken = take(sent, PROOF)
        assert taken.media_type == "image/jpeg"
        assert b"SECRET" not in taken.content
        assert b"script" not in taken.content
        assert Image.open(io.BytesIO(taken.content)).size == (300, 200)


def png_of(width: int, height: int) -> bytes:
    """A PNG that says it is this large and holds next to nothing (RFC 2083)."""

    def chunk(name: bytes, data: bytes) -> bytes:
        return len(data).to_bytes(4, "big") + name + data + zlib.crc32(name + data).to_bytes(4, "big")

    head = width.to_bytes(4, "big") + height.to_bytes(4, "big") + b"\x08\x02\x00\x00\x00"
    start = b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head)
    return start + chunk(b"IDAT", zlib.compress(b"\0" * 999)) + chunk(b"IEND", b"")


@pytest.mark.parametrize(
    ("content", "code"),
    [
        (b"", "proof-unknown-kind"),
        (b"<html><script>alert(1)</script></html>", "proof-unknown-kind"),
        (b"MZ\x90\x00 a program named proof.pdf", "proof-unknown-kind"),
        (b"GIF89a" + b"\0" * 60, "proof-unknown-kind"),
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", "proof-unknown-kind"),
        (b"%PDF-1.4 cut off", "proof-damaged"),
        (b"\xff\xd8\xff\xe0 no picture follows", "proof-damaged"),
        (png_of(60_000, 60_000), "proof-too-many-pixels"),
        (png_of(7_000, 6_000), "proof-too-many-pixels"),
        (PDF + b"\0" * MOST_BYTES, "proof-too-many-bytes"),
    ],
    ids=range(10),
)
def test_what_is_no_proof_is_refused_in_words(content, code):
    with pytest.raises(NotTaken) as refused:
        take(content, PROOF)
    assert refused.value.finding.code == code


def test_the_owner_attaches_and_the_office_ticks_off_with_who_and_when(at):
    send(at)
    actions.tick(who=at.accounts["assistant"], entry=at.entries[0], need="title")
    tick = ProofTick.objects.get()
    assert (tick.by, tick.dog) == (at.accounts["assistant"], at.entries[0].dog)
    assert AuditLine.objects.filter(doing="tick-proof", about=f"entry:{at.entries[0].pk}").count() == 1
    actions.take_tick_back(who=at.accounts["secretary"], entry=at.entries[0], need="title")
    assert not ProofTick.objects.exists()


def test_a_proof_shown_on_paper_is_ticked_without_a_file(at):
    actions.tick(who=at.accounts["secretary"], entry=at.entries[0], need="title")
    assert "Seen by the office" in page(at, "ada").get(f"/enter/small/dogs/{at.entries[0].dog_id}/").content.decode()


def test_what_an_entry_does_not_need_is_neither_sent_nor_ticked(at):
    with pytest.raises(NotNow):
        send(at, need="vaccination")
    with pytest.raises(NotNow):
        actions.tick(who=at.accounts["secretary"], entry=at.entries[1], need="title")


@pytest.mark.parametrize("role", ["steward", "writer", "judge"])
def test_only_the_office_ticks(at, role):
    with pytest.raises(Denied):
        actions.tick(who=at.accounts[role], entry=at.entries[0], need="title")


def test_the_list_shows_what_is_missing(at):
    def missing() -> set[int]:
        return {one.pk for one in lists.entries_of(at.show, lists.Asked(proof="missing"))}

    assert missing() == {at.entries[0].pk}
    actions.ask_terms(who=at.accounts["secretary"], show=at.show, vaccination="Rabies", groups=[])
    everybody = {entry.pk for entry in (*at.entries, at.other_entry)}
    assert missing() == everybody
    actions.tick(who=at.accounts["secretary"], entry=at.entries[0], need="vaccination")
    assert missing() == everybody
    actions.tick(who=at.accounts["secretary"], entry=at.entries[0], need="title")
    assert missing() == everybody - {at.entries[0].pk}


def test_a_proof_reaches_its_owner_and_the_office_of_a_show_where_the_dog_is_entered(at):
    proof = send(at)
    for who in ("ada", "secretary", "assistant"):
        assert access_proof(at.accounts[who], proof.public_id) == proof
    for who in ("ben", "stranger", "steward", "writer", "judge"):
        with pytest.raises(Http404):
            access_proof(at.accounts[who], proof.public_id)
    with pytest.raises(Http404):
        own_proof(at.accounts["secretary"], proof.public_id)


def test_another_exhibitor_neither_sends_nor_reads_nor_deletes(at):
    proof = send(at)
    ben, dog = page(at, "ben"), at.entries[0].dog_id
    file = SimpleUploadedFile("a.pdf", PDF)
    assert ben.post(f"/enter/small/dogs/{dog}/proofs/", {"need": "title", "file": file}).status_code == 404
    assert ben.get(f"/enter/proofs/{proof.public_id}/").status_code == 404
    assert ben.post(f"/enter/small/proofs/{proof.public_id}/delete/").status_code == 404
    assert Proof.objects.count() == 1


def test_a_proof_is_only_ever_a_download(at):
    proof = send(at, content=picture("PNG"))
    answer = page(at, "secretary").get(f"/enter/proofs/{proof.public_id}/")
    assert answer["Content-Disposition"].startswith("attachment;")
    assert answer["X-Content-Type-Options"] == "nosniff"
    assert "sandbox" in answer["Content-Security-Policy"]
    assert "no-store" in answer["Cache-Control"]
    assert b"".join(answer.streaming_content).startswith(b"\xff\xd8\xff")
    assert Client().get(f"/enter/proofs/{proof.public_id}/").status_code == 302
    assert "secret" not in proof.file.name


def test_a_file_that_is_too_large_says_so_on_the_page_and_is_not_kept(at):
    file = SimpleUploadedFile("a.pdf", PDF + b"\0" * (MOST_BYTES + 1))
    where = f"/enter/small/dogs/{at.entries[0].dog_id}/proofs/"
    answer = page(at, "ada").post(where, {"need": "title", "file": file}, follow=True)
    assert "larger than 8 MB" in answer.content.decode()
    assert not Proof.objects.exists()


@pytest.mark.django_db(transaction=True)
def test_a_deleted_proof_takes_its_file_along(at):
    proof = send(at)
    storage, name = proof.file.storage, proof.file.name
    assert storage.exists(name)
    actions.delete_proof(who=at.accounts["ada"], proof=proof)
    assert not storage.exists(name)


def test_what_is_sent_is_among_what_is_kept_and_goes_when_its_owner_is_forgotten(at):
    ada = at.accounts["ada"]
    send(at)
    EntryRequest.objects.create(show=at.show, account=ada, dog=at.entries[0].dog, classes=["open"])
    put_aside = EntryRequest.objects.create(show=at.show, texts={"name": "Rex", "email": "ADA@small.example"})
    kept = kept_of(ada)
    assert [one["need"] for one in kept["proofs"]] == ["title"]
    assert [one["classes"] for one in kept["asked"]] == [["open"]]
    assert "A copy of a paper of" in page(at, "ada").get("/my-dogs/kept/").content.decode()
    forget_contact(who=ada, typed="ada@small.example")
    assert not Proof.objects.exists()
    assert list(EntryRequest.objects.all()) == [put_aside]
    put_aside.refresh_from_db()
    assert put_aside.texts == {"name": "Rex", "email": ""}
