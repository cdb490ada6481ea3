"""A language is added by adding files alone: a copy of the program gets one more, made of the German files."""

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from django.conf import settings

BASE = Path(settings.BASE)
# Every file that README names, by the German one.
ONE_FILE_EACH = (
    "scoring/critique/lexicon/{}.toml", "scoring/standards/words/{}.toml", "scoring/rules/words/{}.toml",
    "static/ring/words/{}.json", "ringside/results/letter_words/{}.toml", "ringside/entries/letter_words/{}.toml",
    "ringside/papers/labels/{}.toml", "ringside/papers/measured_words/{}.toml", "ringside/formats/{}/__init__.py",
    "ringside/formats/{}/formats.py", "locale/{}/LC_MESSAGES/django.po",
)  # fmt: skip
ASK = """
import django
django.setup()
from django.conf import settings
from django.test import Client
from ringside.core.tongues import translated
from ringside.papers.build import labels
from ringside.people.models import Language
from ringside.ring.phrases import names_in
from ringside.ring.shell import words
from scoring.critique.lexicon import LANGUAGES
assert "nl" in dict(settings.LANGUAGES) and "nl" in translated() and "nl" in Language.values, settings.LANGUAGES
assert "nl" in LANGUAGES and "nl" in labels() and "nl" in dict(words())
assert names_in("nl")["grades"]["excellent"] == "Vorzüglich"
page = Client().get("/sign-in/code/", headers={"Accept-Language": "nl"}, follow=True)
assert 'lang="nl"' in page.text and "Nederlands" in page.text and "Anmelde" in page.text, page.text
"""
SHEET = '{"standard": "boxer", "language": "nl", "sex": "dog", "marks": {"croup": 2}}'


@pytest.fixture
def program(tmp_path: Path) -> Path:
    for name in ("ringside", "scoring", "templates", "static", "locale"):
        shutil.copytree(BASE / name, tmp_path / name, ignore=shutil.ignore_patterns("__pycache__", "*.mo"))
    shutil.copyfile(BASE / "manage.py", tmp_path / "manage.py")
    for each in ONE_FILE_EACH:
        (tmp_path / each.format("nl")).parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(tmp_path / each.format("de"), tmp_path / each.format("nl"))
    return tmp_path


def test_the_site_the_ring_the_papers_and_the_critique_take_it(program: Path) -> None:
    known = {name: value for name, value in os.environ.items() if name not in ("DATABASE_URL", "STATIC_ROOT")}
    told = {**known, "DJANGO_SETTINGS_MODULE": "ringside.settings", "DEMO": "1", "SECRET_KEY": "x" * 60}
    told |= {"DATABASE_URL": f"sqlite:///{program}/show.sqlite3", "STATIC_ROOT": str(program / "sent")}
    for command in (["manage.py", "prepare"], ["manage.py", "makemigrations", "--check"], ["-c", ASK]):
        done = subprocess.run([sys.executable, *command], cwd=program, env=told, capture_output=True, text=True)
        assert done.returncode == 0, done.stderr + done.stdout
    written = composed(program)
    assert "Kruppe" in written.stdout, written.stdout + written.stderr


@pytest.mark.parametrize(
    ("line", "named"),
    [("[points.croup]", "croup.-3"), ('subject = "<Rüde|Hündin>"', "subject")],
)
def test_a_word_that_is_still_missing_is_named_by_the_critiques_door(program: Path, line: str, named: str) -> None:
    lexicon = program / "scoring/critique/lexicon/nl.toml"
    told = lexicon.read_text(encoding="utf-8")
    assert line in told
    lexicon.write_text(told.replace(line, "[points.other]" if line.startswith("[") else ""), encoding="utf-8")
    written = composed(program)
    refused = json.loads(written.stdout)["error"]
    assert (written.returncode, written.stderr, refused["code"]) == (2, "", "missing-word")
    assert refused["at"] == "language"
    assert named in refused["message"]


def composed(program: Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "scoring", "critique"], cwd=program, input=SHEET, capture_output=True, text=True
    )
