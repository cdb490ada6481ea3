"""A small show with a row of everything that its file holds, made by the program's own actions where it has one."""

from datetime import UTC, date, datetime, time
from decimal import Decimal

from django.core.files.base import ContentFile

from ringside.core.audit import record
from ringside.core.models import AuditLine
from ringside.dogs.models import Certificate, Dog, Title
from ringside.entries.consents.actions import agree_to_address
from ringside.entries.models import EntryFile, EntryLine, EntryRequest, EntryTerms, GroupEntry, Proof, ProofTick
from ringside.fees import actions as fees
from ringside.fees import setting
from ringside.fees.invoicing import issue_invoice
from ringside.home import asking
from ringside.home.claiming import codes_for
from ringside.home.readers import let_read
from ringside.home.sharing import share_entry
from ringside.notices.models import Notice
from ringside.people.models import Person
from ringside.photos.actions import share_photo
from ringside.results import corrections, day_actions
from ringside.results.actions import publish_class
from ringside.results.models import (
    AwardCorrection,
    AwardGiven,
    AwardsPublication,
    BreedGroup,
    DayChange,
    Final,
    Finalist,
    PaperAwards,
    PaperClass,
)
from ringside.ring.models import Edit, Pairing, Tablet
from ringside.shows.models import Appointment
from ringside.timetable.models import StartTime
from tests.photos.pictures import picture
from tests.photos.sending import kept_photo
from tests.results.writing import Pen, judge_and_sign
from tests.shows_for_tests import FIRST_DAY, SmallShow, small_show

NOW = datetime(2026, 6, 13, 9, tzinfo=UTC)


def full_show() -> SmallShow:
    # Rows before the show's own, so that its ids and the file's ids differ.
    for number in range(3):
        Dog.objects.create(name=f"Other {number}", breed="boxer", sex="dog", born=FIRST_DAY)
        Person.objects.create(name=f"Other {number}")
    found = small_show()
    pen = Pen(found)
    for entry in found.entries:
        pen.write(f"entry:{entry.pk}", {"mark.croup": 1, "mark.topline": -2, "remark": f"“Words” on {entry.number}"})
        pen.sign(f"entry:{entry.pk}")
    judge_and_sign(found)
    # What names a dog that is in no show any more stays what it is.
    Edit.objects.create(id="lost", ring=found.ring, sequence=999, sheet=f"class:{found.show_class.pk}",
                        field="grade.987654", value="good", digest="d", state="refused",
                        made_at="2026-06-13T09:00:00Z", device="hand")  # fmt: skip
    office = found.accounts["secretary"]
    publish_class(by=office, show_class=found.show_class)
    _of_the_day(found)
    _of_the_owner(found)
    _of_the_ring(found)
    _of_entering(found)
    _of_the_finals(found)
    _of_the_money(found)
    return found


def _of_the_day(found: SmallShow) -> None:
    office, first = found.accounts["secretary"], found.entries[0]
    result = corrections.result_of(first.placing)
    changed = corrections.Result(result.presence, "very-good", result.place, result.reason)
    corrections.correct_class(who=office, show_class=found.show_class, results={first.pk: changed}, why="Misread")
    day_actions.write_report(who=office, show=found.show, kind="bite", number=2, text="A bite, a vet called.")
    DayChange.objects.create(entry=first, kind="moved", before="Junior", after="Open", by=office)
    breed = found.show_class.show_breed
    AwardGiven.objects.create(show_breed=breed, award="cacib", sex="dog", entry=first)
    AwardGiven.objects.create(show_breed=breed, award="bob", withheld=True)
    AwardsPublication.objects.create(show_breed=breed, by=office)
    record(who=office, doing="take-role", show_id=found.show.pk, about="role:424242", kind="writer")
    file = EntryFile.objects.create(show=found.show, name="club.csv", content=b"\0\xffx", digest="d", kind="csv",
                                    date_style="dd.mm.yyyy", headings=["Dog"], columns={"name": 0})  # fmt: skip
    EntryLine.objects.create(file=file, line=1, cells=["Dog 1"], entry=first, state="taken")


def _of_the_owner(found: SmallShow) -> None:
    first, ada = found.entries[0], found.accounts["ada"]
    first.dog.chip = "276098100000001"
    first.dog.save()
    first.handler = "Ida Quay"
    first.save()
    Title.objects.create(dog=first.dog, code="national-champion", confirmed_on=FIRST_DAY)
    Certificate.objects.create(dog=first.dog, code="WCC")
    share_photo(by=ada, photo=kept_photo(ada, first.dog, taken_on=FIRST_DAY.isoformat()))
    share_entry(by=ada, entry=first)
    let_read(by=ada, dog=first.dog, email="stranger@small.example", kind="breeder", where="/my-dogs/")
    asked = asking.ask_correction(by=ada, entry=first, kind="name", text="Dogg 1")
    asking.answer_request(by=found.accounts["secretary"], request=asked, answer="Mended.")
    codes_for(entries=found.entries)


def _of_the_ring(found: SmallShow) -> None:
    pairing = Pairing.objects.create(ring=found.ring, day=FIRST_DAY, kind="writer", code_digest="x" * 64, made_at=NOW)
    Tablet.objects.create(ring=found.ring, device="one", pairing=pairing, seen_at=NOW, unsent=0)


def _of_entering(found: SmallShow) -> None:
    first, ada, office = found.entries[0], found.accounts["ada"], found.accounts["secretary"]
    EntryTerms.objects.create(show=found.show, vaccination="rabies", groups=["brace"])
    EntryRequest.objects.create(show=found.show, account=ada, dog=first.dog, classes=["open"], doubts=[])
    proof = Proof(dog=first.dog, need="title", media_type="application/pdf", sent_by=ada)
    proof.file.save("", ContentFile(b"%PDF-1.4\n%%EOF\n"))
    ProofTick.objects.create(show=found.show, dog=first.dog, need="title", by=office)
    group = GroupEntry.objects.create(show=found.show, code="brace", name="Ada's", account=ada)
    group.members.set(found.entries[:2])
    agree_to_address(who=ada, show=found.show, person=first.dog.owners.get(), address="1 Lane", for_office=False)
    record(who=office, doing="enter-group", show_id=found.show.pk, about=f"group:{group.pk}")


def _of_the_finals(found: SmallShow) -> None:
    breed, judge = found.show_class.show_breed, found.show_class.show_breed.judge
    StartTime.objects.create(show_breed=breed, sex="dog", at=time(9, 30))
    told = [["1", "2026-06-13", "1", "09:30"]]
    Notice.objects.create(show=found.show, account=found.accounts["ada"], told=told, state="sent", sent_at=NOW)
    Appointment.objects.create(show_breed=breed, sex="dog", judge=judge, ring=found.ring)
    other = found.other_class
    paper = PaperClass(show_class=other, judge=other.show_breed.judge, typed_by=found.accounts["secretary"],
                       typed_at=NOW, media_type="image/jpeg")  # fmt: skip
    paper.page.save("", ContentFile(picture(size=(900, 700))))
    awards = PaperAwards(show_breed=other.show_breed, judge=other.show_breed.judge, typed_at=NOW, why_no_page="Lost",
                         typed_by=found.accounts["secretary"])  # fmt: skip
    awards.media_type = "application/pdf"
    awards.page.save("", ContentFile(b"%PDF-1.4\n%%EOF\n"))
    BreedGroup.objects.create(show_breed=breed, group="2")
    final = Final.objects.create(show=found.show, award="best-in-group", group="2", judge=judge)
    Finalist.objects.create(final=final, entry=found.entries[0], place=1)
    AwardCorrection.objects.create(show=found.show, final=final, award="best-in-group", place=1,
                                   after=found.entries[0], cause="corrected", why="Misread")  # fmt: skip


def _of_the_money(found: SmallShow) -> None:
    """Two invoices, of which the second replaces the first; a payment, one struck out, and a refund."""
    entry, show = found.entries[0], found.show
    told = {"who": found.accounts["secretary"], "show": show}
    line = {"turn": "", "membership": "", "classes": ["open"]}
    setting.set_terms(**told, currency="EUR", club="Small Club", pay_by=FIRST_DAY)
    setting.add_line(**told, **line, name="Early", amount=Decimal(20), first_day=None, last_day=date(2019, 12, 31))
    setting.add_line(**told, **line, name="Entry", amount=Decimal("40.50"), first_day=date(2020, 1, 1), last_day=None)
    about = {**told, "person": entry.dog.owners.get()}
    setting.set_member(**about, is_member=True)
    issue_invoice(**about)
    fees.change_fee(who=told["who"], entry=entry, amount=Decimal(30), entered_on=None, why="judge", note="Agreed")
    paid = {"day": FIRST_DAY, "how": "transfer"}
    fees.record_payment(**about, kind="received", amount=Decimal("40.50"), reference="A 1", **paid)
    wrong = fees.record_payment(**about, kind="received", amount=Decimal(4), **paid)
    fees.strike_payment(who=told["who"], payment=wrong, why="Typed twice")
    fees.record_payment(**about, kind="refunded", amount=Decimal("10.50"), why="judge", **paid)
    issue_invoice(**about)


def audit_count(found: SmallShow) -> int:
    return AuditLine.objects.filter(scope=f"show:{found.show.pk}").count()
