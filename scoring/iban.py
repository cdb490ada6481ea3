"""International bank account numbers and business identifier codes, by their form alone."""

import re
import tomllib
from functools import cache
from pathlib import Path

from scoring.findings import Finding, refuses

SHAPE = re.compile(r"[A-Z]{2}[0-9]{2}[A-Z0-9]{11,30}")
BIC = re.compile(r"[A-Z]{4}[A-Z]{2}[A-Z0-9]{2}([A-Z0-9]{3})?")


@cache
def lengths() -> dict[str, int]:
    """How long the numbers of each country are, where that is known."""
    found: dict[str, int] = tomllib.loads(Path(__file__).with_name("iban.toml").read_text(encoding="utf-8"))["lengths"]
    return found


@cache
def inside_eea() -> frozenset[str]:
    told = tomllib.loads(Path(__file__).with_name("iban.toml").read_text(encoding="utf-8"))
    return frozenset(told["eea"]["countries"])


def joined(text: str) -> str:
    """The number as machines exchange it: capitals and digits without the blanks it is printed with."""
    return "".join(text.split()).upper()


def grouped(iban: str) -> str:
    """The number as it is printed: groups of four."""
    return " ".join(iban[at : at + 4] for at in range(0, len(iban), 4))


def check_iban(iban: str) -> tuple[Finding, ...]:
    """What is wrong with an account number, as `joined` gives it.

    Rule: two letters for the country, two check digits, 11 to 30 letters and digits; moved behind the rest, the first
    four leave 1 when the whole, with A as 10 to Z as 35, is divided by 97.
    Source: ISO 13616 and ISO 7064 (mod 97-10).
    Limits: whether the account exists is not known here; lengths are known for the euro payments area only.
    """
    if not SHAPE.fullmatch(iban):
        return (refuses("iban-shape", iban=iban),)
    length = lengths().get(iban[:2])
    if length and len(iban) != length:
        return (refuses("iban-length", iban=iban, country=iban[:2], length=length, has=len(iban)),)
    if int("".join(str(int(sign, 36)) for sign in iban[4:] + iban[:4])) % 97 != 1:
        return (refuses("iban-check-digits", iban=iban),)
    return ()


def needs_bic(iban: str) -> bool:
    """Whether a transfer in euro to this account needs the bank's code too.

    Rule: it does where the bank lies outside the European Economic Area. Source: EPC069-12 version 2.1, the line of the
    BIC in version 002 of the code.
    """
    return bool(iban) and iban[:2] not in inside_eea()


def check_bic(bic: str) -> tuple[Finding, ...]:
    """What is wrong with a bank's code: 8 or 11 signs, four letters for the bank, two for the country. ISO 9362."""
    return () if BIC.fullmatch(bic) else (refuses("bic-shape", bic=bic),)
