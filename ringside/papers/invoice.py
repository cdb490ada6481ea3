"""The invoice as it was issued: who owes what for which entry, and for euro shows a code that a bank's app reads."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from typing import Any

from django.utils.formats import date_format
from django.utils.text import capfirst
from django.utils.translation import get_language, gettext
from django.utils.translation import gettext_noop as _
from reportlab.lib.enums import TA_RIGHT
from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import CondPageBreak, KeepTogether, Spacer, Table
from reportlab.platypus.flowables import Flowable
from segno import QRCode, helpers

from ringside.core.sentences import colon
from ringside.fees.models import Invoice
from ringside.fees.money import money
from ringside.papers.fonts import TEXT
from ringside.papers.page import Heading, write
from ringside.papers.pictures import CheckCode
from ringside.papers.styles import HEAD, LINE, RESULT, SMALL
from ringside.papers.tables import BODY, NAME, PAGES, TITLE, ruled, text, width_of
from ringside.shows.books import class_names
from scoring.iban import grouped, needs_bic

COLUMNS = (_("Number"), _("Dog"), _("Class"), _("Fee"), _("Amount"))
SHARES = (0.09, 0.34, 0.2, 0.21, 0.16)
AMOUNT = ParagraphStyle("amount", BODY, alignment=TA_RIGHT)
SUM = ParagraphStyle("sum", NAME, alignment=TA_RIGHT)
# EPC069-12 version 2.1: the most that one transfer may carry, and that one code may.
MOST = Decimal("999999999.99")
MOST_BYTES, MOST_PURPOSE = 331, 140
UTF8 = 1


@dataclass(frozen=True)
class InvoicePaper:
    """Everything printed, in the reader's language. Amounts are decimals in `currency`; `lines` and `pay_to` as the
    invoice froze them; `classes` are the names of the show's classes by code."""

    show: str
    days: str
    number: int
    issued: date
    name: str
    currency: str
    lines: list[dict[str, Any]]
    total: Decimal
    paid: Decimal
    pay_to: dict[str, str]
    classes: dict[str, str] = field(default_factory=dict)
    replaces: int | None = None

    @property
    def still_owed(self) -> Decimal:
        return max(self.total - self.paid, Decimal(0))

    @property
    def purpose(self) -> str:
        """What the payer writes to the bank: the invoice's number first, so that shortening never loses it."""
        return gettext("Invoice {number}, {show}").format(number=self.number, show=self.show)[:MOST_PURPOSE]


def paper_of(invoice: Invoice) -> InvoicePaper:
    show = invoice.show
    first, last = date_format(show.first_day), date_format(show.last_day)
    days = first if first == last else gettext("{first} to {last}").format(first=first, last=last)
    return InvoicePaper(
        show.name, days, invoice.number, invoice.issued_on, invoice.name, invoice.currency, invoice.lines,
        invoice.total, invoice.paid, invoice.pay_to, class_names(show),
        invoice.replaces.number if invoice.replaces else None,
    )  # fmt: skip


def payment_code(paper: InvoicePaper) -> QRCode | None:
    """The code by which a bank's app fills a transfer in; None where nothing is owed, or not in euro, or no account.

    Source: EPC069-12, version 002 of the code, UTF-8, level M; no code where a bank outside the European Economic Area
    has no BIC. A purpose too long for a code of 331 bytes is cut in the code.
    """
    iban, holder = paper.pay_to.get("iban"), paper.pay_to.get("account_holder")
    if paper.currency != "EUR" or not iban or not holder or not Decimal(0) < paper.still_owed <= MOST:
        return None
    bic = paper.pay_to.get("bic") or None
    if bic is None and needs_bic(iban):
        return None
    purpose = _cut(
        paper.purpose, MOST_BYTES - len(f"BCD 002 1 SCT {bic or ''} {holder} {iban} EUR999999999.99   ".encode())
    )
    return (
        helpers.make_epc_qr(holder, iban, paper.still_owed, text=purpose, bic=bic, encoding=UTF8) if purpose else None
    )


def _cut(words: str, most: int) -> str:
    """As many whole signs as fit in so many bytes of UTF-8."""
    return words.encode()[: max(most, 0)].decode(errors="ignore").strip()


def invoice_pdf(paper: InvoicePaper, size: str = "A4") -> bytes:
    title, issued = _title(paper), date_format(paper.issued)
    heading = Heading(
        title=colon(title, paper.show), author="", subject=paper.days, language=get_language() or "en",
        left=colon(paper.show, title), right=issued, pages=gettext(PAGES),
    )  # fmt: skip
    return write(list(_flow(paper, width_of(size))), heading, size)


def _title(paper: InvoicePaper) -> str:
    return gettext("Invoice {number}").format(number=paper.number)


def _flow(paper: InvoicePaper, width: float) -> Iterator[Flowable]:
    yield Spacer(1, 10)
    for line in paper.pay_to.get("issuer", "").splitlines():
        yield text(line, LINE)
    yield Spacer(1, 10)
    yield text(_title(paper), TITLE)
    yield text(gettext("For {name}").format(name=paper.name), RESULT)
    entries = gettext("{issued}. Entries at {show}, {days}.")
    yield text(entries.format(issued=date_format(paper.issued), show=paper.show, days=paper.days), LINE)
    if paper.replaces:
        yield text(gettext("This invoice replaces invoice {number}.").format(number=paper.replaces), LINE)
    yield Spacer(1, 8)
    rows = [_row(line, paper) for line in paper.lines]
    head = [*(text(gettext(word)) for word in COLUMNS[:-1]), text(gettext(COLUMNS[-1]), AMOUNT)]
    yield ruled([head, *rows], [share * width for share in SHARES])
    yield from _sums(paper, width)
    yield from _how_to_pay(paper, width)
    if paper.pay_to.get("note"):
        # A code needs four of its squares of white around it.
        yield Spacer(1, 14)
        yield text(paper.pay_to["note"], LINE)


def _row(line: dict[str, Any], paper: InvoicePaper) -> list[Flowable]:
    number = "" if line["number"] is None else str(line["number"])
    name = paper.classes.get(line["class"], capfirst(line["class"]))
    where = gettext("{name} (withdrawn)").format(name=name) if line["withdrawn"] else name
    fee = line["fee"] or gettext("as agreed")
    amount = money(Decimal(line["amount"]), paper.currency)
    return [text(number), text(line["dog"], NAME), text(where), text(fee), text(amount, AMOUNT)]


def _sums(paper: InvoicePaper, width: float) -> Iterator[Flowable]:
    told = [(gettext("Total"), paper.total), (gettext("Paid"), paper.paid), (gettext("Still to pay"), paper.still_owed)]
    if paper.paid > paper.total:
        told.append((gettext("To be paid back"), paper.paid - paper.total))
    rows = [[text(name, NAME), text(money(amount, paper.currency), SUM)] for name, amount in told]
    table = ruled(rows, [0.21 * width, 0.16 * width], heads=0)
    table.hAlign = "RIGHT"
    yield KeepTogether([Spacer(1, 6), table, Spacer(1, 10)])


def _how_to_pay(paper: InvoicePaper, width: float) -> Iterator[Flowable]:
    if paper.still_owed == 0 or not paper.pay_to.get("iban"):
        return
    words: list[Flowable] = [text(gettext("How to pay"), HEAD), *(text(line, BODY) for line in _transfer(paper))]
    code = payment_code(paper)
    if code is None:
        yield KeepTogether(words)
        return
    told = gettext("A bank's app reads this code and fills the transfer in. Compare before you pay.")
    words.append(text(told, SMALL))
    yield CondPageBreak(120)
    style = [
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("FONT", (0, 0), (-1, -1), TEXT),
        ("LEFTPADDING", (0, 0), (0, -1), 0),
        ("LEFTPADDING", (1, 0), (1, -1), 16),
    ]
    yield Table([[words, CheckCode(code, 96)]], colWidths=[width - 120, 120], style=style)


def _transfer(paper: InvoicePaper) -> Iterator[str]:
    """What a payer types into a bank's form, line by line."""
    to = paper.pay_to
    yield gettext("Account holder: {name}").format(name=to.get("account_holder", ""))
    yield f"IBAN: {grouped(to['iban'])}"
    if to.get("bic"):
        yield f"BIC: {to['bic']}"
    yield gettext("Amount: {amount}").format(amount=money(paper.still_owed, paper.currency))
    yield gettext("Purpose: {purpose}").format(purpose=paper.purpose)
    if to.get("pay_by"):
        yield gettext("Please pay by {day}.").format(day=date_format(date.fromisoformat(to["pay_by"])))
