"""Microchip numbers as they are printed: 15 digits, of which the first three name a country or a manufacturer."""

import re

from scoring.findings import Finding, refuses, warns

DIGITS = 15
LARGEST_NATIONAL_CODE = 2**38 - 1
TEST_PREFIX = "999"
# A whole number to which a spreadsheet has added ".0" has lost nothing; one with an exponent has.
WHOLE = re.compile(r"(\d+)[.,]0+")
EXPONENT = re.compile(r"\d+([.,]\d+)?[eE]\+?\d+")
SEPARATORS = re.compile(r"[\s.\-_/'’]+")
ROUNDED = re.compile(r"\d*0{6}")


def chip_number(text: str) -> str:
    """The number without the spaces, dashes and dots it may be grouped with; other text is left as it is."""
    text = text.strip()
    whole = WHOLE.fullmatch(text)
    joined = whole[1] if whole else SEPARATORS.sub("", text)
    return joined if joined.isdecimal() and joined.isascii() else text


def check_chip(text: str) -> tuple[Finding, ...]:
    """Everything that is wrong with a microchip number, by its form alone.

    Rule: 15 decimal digits; three for a country (001 to 899) or a manufacturer (900 and above), twelve for a national
    code that is held in 38 bits and so is at most 274877906943. 999 is for tests, not for a dog.
    Source: ISO 11784 as shown by ICAR and animaldata.com (read); the largest national code follows from its 38 bits
    (derived); 999 for tests from memory, therefore only a warning.
    Limits: the number has no check digit, so a wrong digit cannot be seen; which countries and manufacturers exist is
    not looked up; a number that ends on six zeros may have been rounded by a spreadsheet, which is a warning.
    Arguments: the number as `chip_number` gives it.
    Returns: the findings; none for a number that is right in form.
    """
    if EXPONENT.fullmatch(text.strip()):
        return (refuses("chip-shortened-by-spreadsheet", chip=text),)
    if not (text.isdecimal() and text.isascii()):
        return (refuses("chip-not-digits", chip=text),)
    if len(text) != DIGITS:
        return (refuses("chip-wrong-length", chip=text, digits=len(text)),)
    return tuple(finding for finding in (_prefix(text), _national_code(text), _rounded(text)) if finding)


def _prefix(text: str) -> Finding | None:
    if text.startswith("000"):
        return refuses("chip-prefix-unknown", chip=text, prefix="000")
    return warns("chip-for-tests", chip=text) if text.startswith(TEST_PREFIX) else None


def _national_code(text: str) -> Finding | None:
    too_large = int(text[3:]) > LARGEST_NATIONAL_CODE
    return refuses("chip-cannot-exist", chip=text, largest=str(LARGEST_NATIONAL_CODE)) if too_large else None


def _rounded(text: str) -> Finding | None:
    return warns("chip-may-be-rounded", chip=text) if ROUNDED.fullmatch(text) else None
