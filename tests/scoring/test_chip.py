"""Microchip numbers. Source: ISO 11784 as described by ICAR and animaldata.com (15 digits, 38 bits for the national
code, 001-899 countries by ISO 3166, 900 and above makers)."""

import pytest

from scoring.chip import check_chip


@pytest.mark.parametrize("chip", ["968000004531234", "040098100111917", "276098106123456", "276274877906943"])
def test_a_number_that_can_be_is_let_through(chip):
    assert [finding for finding in check_chip(chip) if finding.severity == "refuses"] == []


@pytest.mark.parametrize(
    ("chip", "code"),
    [
        ("27609810612345", "chip-wrong-length"),
        ("2760981061234567", "chip-wrong-length"),
        ("276274877906944", "chip-cannot-exist"),  # 2^38, one above the largest national code
        ("000098106123456", "chip-prefix-unknown"),
        ("2.76098E+14", "chip-shortened-by-spreadsheet"),
        ("276O98106123456", "chip-not-digits"),
        ("٢٧٦٠٩٨١٠٦١٢٣٤٥٦", "chip-not-digits"),
    ],
)
def test_a_number_that_cannot_be_is_refused_with_its_reason(chip, code):
    assert code in [finding.code for finding in check_chip(chip) if finding.severity == "refuses"]


def test_the_largest_national_code_is_two_to_the_38th_less_one():
    # Source: ISO 11784 gives the national code 38 bits.
    assert 2**38 - 1 == 274877906943
