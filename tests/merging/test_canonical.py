"""Canonical JSON and the digest that an edit leaves a tablet by."""

import hashlib
import json
import struct
from typing import Any

import pytest
from hypothesis import given

from scoring import canonical
from scoring.sheet import digest, parse_edit
from tests.merging.edits import json_values, raw

# RFC 8785 (IETF, 2020), appendix B: the bits of a double and the text it is written as.
RFC_8785_NUMBERS = {
    "0000000000000000": "0",
    "8000000000000000": "0",
    "0000000000000001": "5e-324",
    "7fefffffffffffff": "1.7976931348623157e+308",
    "4340000000000000": "9007199254740992",
    "c340000000000000": "-9007199254740992",
    "4430000000000000": "295147905179352830000",
    "44b52d02c7e14af5": "9.999999999999997e+22",
    "44b52d02c7e14af6": "1e+23",
    "44b52d02c7e14af7": "1.0000000000000001e+23",
    "444b1ae4d6e2ef4f": "999999999999999900000",
    "444b1ae4d6e2ef50": "1e+21",
    "3eb0c6f7a0b5ed8c": "9.999999999999997e-7",
    "3eb0c6f7a0b5ed8d": "0.000001",
    "41b3de4355555555": "333333333.3333333",
    "becbf647612f3696": "-0.0000033333333333333333",
    "43143ff3c1cb0959": "1424953923781206.2",
}


@pytest.mark.parametrize("bits", RFC_8785_NUMBERS)
def test_a_number_is_written_as_the_rfc_lists_it(bits: str) -> None:
    (number,) = struct.unpack(">d", bytes.fromhex(bits))
    assert canonical.text(number) == RFC_8785_NUMBERS[bits]


@pytest.mark.parametrize(
    ("value", "text"),
    [
        ({"b": 1, "a": [None, True, 1.0]}, '{"a":[null,true,1],"b":1}'),
        ('€\u000f\n"\\/', '"€\\u000f\\n\\"\\\\/"'),
        # RFC 8785, 3.2.3: names are sorted by UTF-16 code units, so an emoji comes before a Hebrew presentation form.
        (
            {"\ufb33": 1, "\U0001f600": 2, "\u20ac": 3, "1": 4, "\r": 5},
            '{"\\r":5,"1":4,"€":3,"\U0001f600":2,"\ufb33":1}',
        ),
    ],
)
def test_a_value_is_written_without_choice(value: Any, text: str) -> None:
    assert canonical.text(value) == text


@given(json_values)
def test_canonical_text_reads_back_as_the_value(value: Any) -> None:
    # A browser's numbers are all floats; 4.5e16 is written as a whole number.
    assert json.loads(canonical.text(value), parse_int=float) == value


def test_the_digest_is_that_of_the_eight_members_and_no_other() -> None:
    said = raw(value={"b": 1.0, "a": None}, seq=7, by="a judge")
    text = (
        '{"device":"tablet-1","field":"mark.croup","id":"a","made_at":"2026-06-13T09:30:00Z","replaces":[],'
        '"sheet":"entry:1","v":1,"value":{"a":null,"b":1}}'
    )
    assert digest(parse_edit(said)) == hashlib.sha256(text.encode()).hexdigest()
