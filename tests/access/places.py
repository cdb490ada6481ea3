"""One of everything that an address of the site may name, and an account for each role."""

import io
from datetime import UTC, date, datetime
from typing import Any

from django.core.files.base import ContentFile
from PIL import Image

from ringside.entries.models import Consent, EntryFile, EntryLine, EntryRequest, GroupEntry, Proof
from ringside.fees.models import FeeLine, Invoice, Payment, Terms
from ringside.home.models import CorrectionRequest, Reader, Share
from ringside.papers.models import PaperRun
from ringside.people.models import Account
from ringside.photos.models import Photo
from ringside.results.actions import fingerprint
from ringside.results.models import Critique, Final, PaperAwards, PaperClass, Publication
from ringside.ring.models import Edit, Pairing, Tablet
from ringside.shows.models import Role, Show
from tests.shows_for_tests import SmallShow, small_show


class Places:
    """`parts` are what addresses are made of; `accounts` are by role, "nobody" has none."""

    def __init__(self) -> None:
        at = self.at = small_show()
        self.parts = {**_of_show(at), **_of_ring(at), **_of_files(at), **_of_results(at), **_of_photos(at)}
        self.parts |= _of_entering(at)
        self.parts |= _of_money(at)
        self.accounts: dict[str, Account | None] = {
            **{
                name: at.accounts[name] for name in ("secretary", "assistant", "steward", "writer", "judge", "stranger")
            },
            "owner": _owner(at),
            "exhibitor": at.accounts["ada"],
            "nobody": None,
        }


def _owner(at: SmallShow) -> Account:
    account = Account.objects.create_user("owner@small.example")
    Role.objects.create(show=at.show, account=account, kind=Role.Kind.OWNER)
    return account


def _of_show(at: SmallShow) -> dict[str, Any]:
    role = Role.objects.get(show=at.show, kind="writer")
    return {
        "slug": at.show.slug, "class_id": at.show_class.pk, "breed_id": at.show_class.show_breed_id,
        "entry_id": at.entries[0].pk, "dog_id": at.entries[0].dog_id, "role_id": role.pk,
        "person_id": at.show_class.show_breed.judge_id,
    }  # fmt: skip


def _of_ring(at: SmallShow) -> dict[str, Any]:
    now = datetime(2026, 6, 13, 9, tzinfo=UTC)
    pairing = Pairing.objects.create(ring=at.ring, day=date(2026, 6, 13), kind="judge", code_digest="d", made_at=now)
    tablet = Tablet.objects.create(ring=at.ring, device="one", seen_at=now)
    edit = Edit.objects.create(id="held", ring=at.ring, sequence=1, sheet=f"entry:{at.entries[0].pk}",
                               field="mark.croup", value=1, digest="d", state="held")  # fmt: skip
    return {
        "ring_id": at.ring.pk,
        "ring": at.ring.pk,
        "kind": "steward",
        "pairing_id": pairing.pk,
        "tablet_id": tablet.pk,
        "edit_id": edit.pk,
    }


def _of_files(at: SmallShow) -> dict[str, Any]:
    file = EntryFile.objects.create(
        show=at.show, name="a.csv", digest="d", kind="csv", date_style="dd.mm.yyyy", headings=["Dog"],
        columns={"name": 0},
    )  # fmt: skip
    EntryLine.objects.create(file=file, line=1, cells=["Rex"])
    return {"file_id": file.pk, "line_no": 1}


def _of_entering(at: SmallShow) -> dict[str, Any]:
    Show.objects.filter(pk=at.show.pk).update(entries_open=date(2026, 4, 1))
    asked = EntryRequest.objects.create(
        show=at.show, account=at.accounts["ada"], dog=at.entries[0].dog, classes=["open"], doubts=[]
    )
    proof = Proof(dog=at.entries[0].dog, need="title", media_type="application/pdf", sent_by=at.accounts["ada"])
    proof.file.save("", ContentFile(b"%PDF-1.4 %%EOF"))
    group = GroupEntry.objects.create(show=at.show, code="brace", name="Pair", account=at.accounts["ada"])
    owner = at.entries[0].dog.owners.get()
    agreed = Consent.objects.create(
        person=owner, what="catalogue-address", wording=1, show=at.show, text="1 Lane", way="web"
    )
    return {
        "consent_id": agreed.pk,
        "proof_id": proof.public_id, "group_id": group.pk, "waiting_id": asked.pk, "email": "new@small.example",
        "reason": "Asked and clear.",
    }  # fmt: skip


def _of_money(at: SmallShow) -> dict[str, Any]:
    person = at.entries[0].dog.owners.get()
    Terms.objects.create(show=at.show, last_invoice=1)
    line = FeeLine.objects.create(show=at.show, name="Entry", amount=30)
    payment = Payment.objects.create(
        show=at.show, person=person, kind="received", amount=30, day=date(2026, 5, 1), how="cash"
    )
    invoice = Invoice.objects.create(
        show=at.show, number=1, person=person, name=person.name, issued_on=date(2026, 5, 1), currency="EUR",
        lines=[], total=30, paid=30, pay_to={},
    )  # fmt: skip
    return {"exhibitor_id": person.pk, "line_id": line.pk, "payment_id": payment.pk, "invoice_id": invoice.pk}


def _of_results(at: SmallShow) -> dict[str, Any]:
    Publication.objects.create(show_class=at.show_class)
    told = {"judge": at.show_class.show_breed.judge, "typed_at": datetime(2026, 6, 13, 9, tzinfo=UTC)}
    PaperClass(show_class=at.show_class, media_type="application/pdf", **told).page.save("", ContentFile(b"%PDF"))
    breed = at.show_class.show_breed
    PaperAwards(show_breed=breed, media_type="application/pdf", **told).page.save("", ContentFile(b"%PDF"))
    paper = {"standard": "boxer", "sex": "dog", "marks": {"croup": 1}, "praise": [], "grade": "excellent", "place": 1}
    made = fingerprint(at.entries[0].pk, paper, ["Good."])
    critique = Critique.objects.create(
        entry=at.entries[0], language="en", sentences=["Good."], paper=paper, fingerprint=made,
        signed_at=datetime(2026, 6, 13, 9, tzinfo=UTC),
    )  # fmt: skip
    share = Share.objects.create(entry=at.entries[0], token="s" * 43)
    reader = Reader.objects.create(
        dog=at.entries[0].dog, email=at.accounts["stranger"].email, kind="breeder", given_by=at.accounts["ada"]
    )
    asked = CorrectionRequest.objects.create(entry=at.entries[0], kind="name", text="Other.")
    run = PaperRun(show=at.show, kind="book", language="en", site="http://testserver/", critiques=[], done=0)
    run.file.save("run.pdf", ContentFile(b"%PDF"))
    return {
        "critique_id": critique.pk,
        "run_id": run.pk,
        "fingerprint": made[:16],
        "share_id": share.pk,
        "reader_id": reader.pk,
        "share_token": share.token,
        "request_id": asked.pk,
        "answer": "Done.",
        "final_id": Final.objects.create(show=at.show, award="best-in-group", group="2").pk,
        "group": "2",
    }


def _of_photos(at: SmallShow) -> dict[str, Any]:
    target = io.BytesIO()
    Image.new("RGB", (640, 480), "white").save(target, "JPEG")
    photo = Photo(
        dog=at.entries[0].dog, view="standing-side", width=640, height=480, click_sd_px=2.0, share_token="t" * 43
    )
    photo.file.save("one.jpg", ContentFile(target.getvalue()))
    at_ring = Photo(
        dog=at.entries[0].dog, entry=at.entries[0], ring=at.ring, view="front", width=640, height=480, click_sd_px=2.0
    )
    at_ring.file.save("two.jpg", ContentFile(target.getvalue()))
    return {"public_id": photo.public_id, "token": photo.share_token, "photo_id": at_ring.public_id}
