"""What a tablet keeps of the page: every file it loads, nothing of anybody, one address for ever."""

import re
from pathlib import Path

import pytest
from django.conf import settings
from django.test import Client

from ringside.ring.shell import files, modules
from tests.shows_for_tests import small_show

pytestmark = [pytest.mark.django_db]


def test_the_worker_names_every_module_that_the_page_imports():
    folder = Path(settings.BASE) / "static" / "ring"
    text = "".join((folder / name).read_text(encoding="utf-8") for name in modules())
    imported = set(re.findall(r'^import [^;]*?from "\./([\w-]+\.js)";', text, re.M | re.S))
    assert imported | {"page.js"} == set(modules())
    assert len(files()) == len(modules()) + 3


def test_the_worker_is_asked_for_each_time_and_never_takes_over_by_itself():
    answer = Client().get("/ring/worker.js")
    text = answer.content.decode()
    assert answer.headers["Content-Type"].startswith("text/javascript")
    assert "no-cache" in answer.headers["Cache-Control"]
    assert text.count("skipWaiting") == 1
    assert 'data === "take-over" && skipWaiting()' in text


def test_the_kept_page_holds_nothing_of_a_ring_or_a_person():
    at = small_show()
    client = Client()
    client.force_login(at.accounts["judge"])
    shell, page = (client.get(address).content.decode() for address in ("/ring/shell/", f"/ring/{at.ring.pk}/"))
    assert shell == page
    assert "csrf" not in shell.lower()
    assert at.show.name not in shell
