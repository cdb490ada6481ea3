"""The checklist that a native reader goes through stands in DEVELOPERS.md as the tests hold it."""

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


@pytest.mark.parametrize("language", ["en", "fr", "de", "es"])
def test_every_line_of_the_checklist_is_in_developers_md_and_held_by_a_test(language):
    tests = (ROOT / "tests" / "critique" / f"test_checklist_{language}.py").read_text(encoding="utf-8")
    held = {name.replace("_", " ") for name in re.findall(r"^def test_(\w+)", tests, re.MULTILINE)}
    told = " ".join((ROOT / "DEVELOPERS.md").read_text(encoding="utf-8").split())
    name = {"en": "English", "fr": "French", "de": "German", "es": "Spanish"}[language]
    found = re.search(rf"- \*\*{name}\*\*: (.*?)\.(?= - \*\*| ##)", told)
    assert found
    assert set(found[1].split("; ")) == held
