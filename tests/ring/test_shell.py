"""What a tablet keeps of the page: every file it loads, nothing of anybody, one address for ever."""

import re
from pathlib import Path

import pytest
from django.conf import settings
from django.test import Client

from ringside.ring.shell import files, later_files, later_modules
from tests.shows_for_tests import small_show

pytestmark = [pytest.mark.django_db]


def test_the_worker_names_every_file_that_the_page_loads():
    page = Client().get("/ring/shell/").content.decode()
    loaded = set(re.findall(r'(?:href|src)="(/static/[^"]+)"', page))
    assert loaded
    assert loaded == set(files())


def test_the_worker_is_asked_for_each_time_and_never_takes_over_by_itself():
    answer = Client().get("/ring/worker.js")
    text = answer.content.decode()
    assert answer.headers["Content-Type"].startswith("text/javascript")
    assert "no-cache" in answer.headers["Cache-Control"]
    assert text.count("skipWaiting") == 1
    assert 'data === "take-over") skipWaiting()' in text


def test_the_kept_page_holds_nothing_of_a_ring_or_a_person():
    at = small_show()
    client = Client()
    client.force_login(at.accounts["judge"])
    shell, page = (client.get(address).content.decode() for address in ("/ring/shell/", f"/ring/{at.ring.pk}/"))
    assert shell == page
    assert "csrf" not in shell.lower()
    assert at.show.name not in shell


def test_what_is_kept_later_names_all_that_the_photo_page_loads_and_nothing_twice():
    root, names = Path(settings.BASE) / "static", later_modules()
    for name in names:
        for path in re.findall(r'^(?:import|} from) .*?"(\.[^"]+)";$', (root / name).read_text(encoding="utf-8"), re.M):
            assert ((root / name).parent / path).resolve() in {(root / one).resolve() for one in names}
    assert {"js/measuring.js", "js/marking/desk.js", "ring/photos.js"} <= set(names)
    assert not set(files()) & set(later_files())
    text = Client().get("/ring/worker.js").content.decode()
    assert all(f'"{name}"' in text for name in (*files(), *later_files()))


def test_the_kept_photo_page_holds_nothing_of_a_ring_a_dog_or_a_person():
    at = small_show()
    client = Client()
    client.force_login(at.accounts["judge"])
    shell, page = (client.get(where).content.decode() for where in ("/ring/photo-shell/", f"/ring/{at.ring.pk}/photo/"))
    assert shell == page
    assert "csrf" not in shell.lower()
    assert at.entries[0].dog.name not in shell
