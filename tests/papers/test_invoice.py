"""The invoice, read back: names, amounts, sums, and the payment code line by line as EPC069-12 orders them.

Source of the order of lines, level M, UTF-8 as 1 and "EUR" before the amount: European Payments Council, "Quick
Response Code: Guidelines to Enable the Data Capture for the Initiation of a SEPA Credit Transfer", EPC069-12.
"""

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest
import segno
from django.utils import translation

from ringside.papers.invoice import InvoicePaper, invoice_pdf, payment_code
from tests.papers import reading

IBAN = "DE89370400440532013000"
LONG = "Champion of the Windswept Meadows beyond the Long River Ferdinand von und zu Hohenfels the Third"


def paper(lines: int = 3, **more) -> InvoicePaper:
    rows = [
        {
            "number": n, "dog": f"{LONG} {n}", "class": "open", "withdrawn": n == 2,
            "fee": "" if n == 3 else "Further dog of the same owner", "amount": "30.00",
        }
        for n in range(1, lines + 1)
    ]  # fmt: skip
    told = {
        "show": "Meadow Show", "days": "13 June 2026", "number": 12, "issued": date(2026, 5, 2), "name": LONG,
        "currency": "EUR", "classes": {"open": "Open"}, "lines": rows,
        "total": Decimal(30 * lines), "paid": Decimal("7.50"),
        "pay_to": {
            "issuer": "Meadow Club\nRiver Road 1", "account_holder": "Müller & Söhne Club", "iban": IBAN,
            "bic": "COBADEFFXXX", "pay_by": "2026-06-01", "note": "Thank you.",
        },
    }  # fmt: skip
    return InvoicePaper(**{**told, **more})


def test_the_payment_code_holds_the_lines_of_epc069_12_in_their_order():
    # Service tag, version, character set, identification, BIC, name, IBAN, amount, purpose, structured reference,
    # unstructured text; what follows the last line that is filled may be left out.
    lines = ["BCD", "002", "1", "SCT", "COBADEFFXXX", "Müller & Söhne Club", IBAN, "EUR82.5", "", "",
             "Invoice 12, Meadow Show"]  # fmt: skip
    code = payment_code(paper())
    again = segno.make_qr("\n".join(lines).encode("utf-8"), error="m", boost_error=False)
    assert code.error == "M"
    assert code.version <= 13
    assert [bytes(row) for row in code.matrix] == [bytes(row) for row in again.matrix]


@pytest.mark.parametrize(
    "more",
    [
        {"currency": "CHF"},
        {"paid": Decimal(90)},
        {"paid": Decimal(100)},
        {"pay_to": {"account_holder": "Club", "iban": ""}},
        {"total": Decimal(10) ** 9 + 8},
        # The registry's example for Switzerland, outside the European Economic Area, without its bank's code.
        {"pay_to": {"account_holder": "Club", "iban": "CH9300762011623852957"}},
    ],
)
def test_there_is_no_payment_code_where_the_standard_has_none_or_nothing_is_owed(more):
    assert payment_code(paper(**more)) is None
    reading.check(invoice_pdf(paper(**more)))


@pytest.mark.parametrize("size", ["A4", "letter"])
@pytest.mark.parametrize("lines", [3, 40])
def test_the_printed_invoice_is_sound_and_says_every_line_total_paid_and_still_to_pay(size, lines):
    printed = invoice_pdf(paper(lines), size)
    reading.check(printed)
    assert all(reading.fonts(printed).values())
    text = reading.text(printed)
    assert [n for n in range(1, lines + 1) if f"{LONG} {n} " not in text] == []
    expected = [
        "Invoice 12", f"Total {30 * lines:,}.00 EUR", "Paid 7.50 EUR", f"Still to pay {30 * lines - 7.5:,.2f} EUR",
        "Open (withdrawn)", "as agreed",
        "DE89 3704 0044 0532 0130 00", "Please pay by 1 June 2026.", "Meadow Club River Road 1",
    ]  # fmt: skip
    assert [words for words in expected if words not in text] == []
    for page in reading.pages(printed):
        assert f"of {len(reading.pages(printed))}" in page


def test_an_account_in_credit_says_what_is_to_be_paid_back():
    text = reading.text(invoice_pdf(replace(paper(), paid=Decimal(100))))
    assert "To be paid back 10.00 EUR" in text
    assert "How to pay" not in text


# The longest that a show's terms and name can be, in signs of two bytes each.
GREEK = "Ανεμόεσσα" * 16


def test_a_purpose_too_long_for_331_bytes_is_cut_in_the_code_behind_the_invoices_number():
    """EPC069-12: version 13 and 331 bytes at the most."""
    told = paper(show=GREEK, pay_to={**paper().pay_to, "account_holder": GREEK[:70]})
    assert len(told.purpose) == 140
    code = payment_code(told)
    assert code.version <= 13
    fixed = f"BCD\n002\n1\nSCT\nCOBADEFFXXX\n{GREEK[:70]}\n{IBAN}\nEUR82.5\n\n\n"
    cut = [told.purpose[:length].strip() for length in range(20, 140)]
    again = [segno.make_qr(f"{fixed}{words}".encode(), error="m", boost_error=False) for words in cut]
    assert [bytes(row) for row in code.matrix] in [[bytes(row) for row in one.matrix] for one in again]


@pytest.mark.parametrize(
    ("language", "words"),
    [
        ("de", ["Rechnung 12", "Noch zu zahlen 82,50 EUR", "Bitte zahlen Sie bis 1. Juni 2026."]),
        ("fr", ["Facture 12", "Reste à payer 82,50 EUR", "1 juin 2026"]),
        ("es", ["Factura 12", "Pendiente de pago 82,50 EUR", "1 de junio de 2026"]),
    ],
)
def test_the_invoice_speaks_its_readers_language(language, words):
    with translation.override(language):
        text = reading.text(invoice_pdf(paper()))
    assert [one for one in words if one not in text] == []
