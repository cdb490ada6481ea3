"""The command-line doors: bad input is answered with a code, a sentence and a place, never with a traceback."""

import json
import subprocess
import sys

import pytest

from scoring.__main__ import DOORS

VERBS = tuple(DOORS)


def call(verb: str, text: str | bytes) -> tuple[int, dict]:
    given = text if isinstance(text, bytes) else text.encode()
    done = subprocess.run([sys.executable, "-m", "scoring", verb], input=given, capture_output=True, check=False)
    assert done.stderr == b""
    return done.returncode, json.loads(done.stdout)


@pytest.mark.parametrize("verb", VERBS)
@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "not-json"),
        ("{", "not-json"),
        ("[]", "not-an-object"),
        ("null", "not-an-object"),
        (b"\xff\xfe", "not-json"),
        ('{"a": NaN}', "not-json"),
        ('{"a": "\\ud800"}', "wrong-type"),
        ("[" * 100_000, "not-json"),
    ],
)
def test_what_is_no_object_is_refused_by_every_verb(verb, text, code):
    status, answer = call(verb, text)
    assert (status, answer["error"]["code"]) == (2, code)
    assert answer["error"]["message"].endswith(".")


@pytest.mark.parametrize("verb", [verb for verb in VERBS if verb != "standards"])
def test_a_required_key_that_is_missing_is_named(verb):
    status, answer = call(verb, "{}")
    assert (status, answer["error"]["code"]) == (2, "missing-key")
    assert answer["error"]["at"]


def test_an_unknown_verb_lists_the_known_ones():
    status, answer = call("guess", "{}")
    assert (status, answer["error"]["code"]) == (2, "unknown-code")
    assert "merit" in answer["error"]["message"]


@pytest.mark.parametrize("text", ["2026-W24-6", "20260613", "2026-6-13", "13.06.2026", "2026-02-30", "٢٠٢٦-٠٦-١٣"])
def test_only_a_calendar_date_is_a_date(text):
    question = {"rules": "fci", "shown_on": text, "dog": {"born": "2024-01-01", "sex": "dog", "neutered": False}}
    status, answer = call(
        "classes", json.dumps({**question, "dog": {**question["dog"], "titles": [], "certificates": []}})
    )
    assert (status, answer["error"]["code"], answer["error"]["at"]) == (2, "bad-date", "shown_on")


def test_standards_lists_the_eight_breeds_with_their_points():
    status, answer = call("standards", "{}")
    codes = {standard["code"] for standard in answer["standards"]}
    assert status == 0
    assert codes >= {
        "boxer", "hovawart", "bernese-mountain-dog", "german-shepherd-dog", "rottweiler", "dobermann", "leonberger",
        "dachshund",
    }  # fmt: skip
    for standard in answer["standards"]:
        assert set(standard) >= {"code", "name", "number", "points"}
        for point in standard["points"]:
            assert point["kind"] in {"two-sided", "choice", "set", "number", "yes-no"}
