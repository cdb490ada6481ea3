"""Account numbers by ISO 13616 (mod 97-10 of ISO 7064) and banks' codes by ISO 9362."""

import pytest

from ringside.core.sentences import sentence
from scoring.iban import check_bic, check_iban, grouped, joined, needs_bic

# Example numbers that ISO 13616's registry prints for each country, read in a public copy of it.
PUBLISHED = (
    "AD1200012030200359100100", "AT611904300234573201", "BE68539007547034", "CH9300762011623852957",
    "DE89370400440532013000", "DK5000400440116243", "ES9121000418450200051332", "FI2112345600000785",
    "FR1420041010050500013M02606", "GB29NWBK60161331926819", "MT84MALT011000012345MTLCAST001S", "NL91ABNA0417164300",
    "NO9386011117947", "SE4550000000058398257466",
)  # fmt: skip


@pytest.mark.parametrize("iban", PUBLISHED)
def test_a_published_number_passes_and_each_wrong_digit_in_it_is_found(iban):
    assert check_iban(joined(grouped(iban).lower())) == ()
    for at in range(2, len(iban)):
        if iban[at].isdecimal():
            wrong = f"{iban[:at]}{(int(iban[at]) + 1) % 10}{iban[at + 1 :]}"
            assert [one.code for one in check_iban(wrong)] == ["iban-check-digits"]


@pytest.mark.parametrize(
    ("iban", "code"), [("12345", "iban-shape"), ("", "iban-shape"), ("DE8937040044053201300", "iban-length")]
)
def test_a_number_of_the_wrong_form_is_told_what_to_mend(iban, code):
    [found] = check_iban(iban)
    assert found.code == code
    assert sentence(found).endswith(".")


def test_a_banks_code_has_eight_or_eleven_signs():
    assert check_bic("BFSWDE33BER") == check_bic("BFSWDE33") == ()
    assert [one.code for one in check_bic("BFSWDE3")] == ["bic-shape"]


def test_euro_to_a_bank_outside_the_european_economic_area_need_its_code():
    """EPC069-12, version 002; who is in: the Agreement's parties, of which Switzerland and the Kingdom are none."""
    assert [iban[:2] for iban in PUBLISHED if needs_bic(iban)] == ["AD", "CH", "GB"]
    assert not needs_bic("")
