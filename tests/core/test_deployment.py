"""A deployment is environment variables and nothing else; the demo's doors exist only in the demo."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
SECRET = "k7-" + "qW3e5rT8yU1iO9pA2sD4fG6hJ0kL" * 2


def manage(*arguments: str, **environment: str) -> subprocess.CompletedProcess[str]:
    clean = {name: value for name, value in os.environ.items() if name in ("PATH", "HOME", "LANG")}
    given = {"DJANGO_SETTINGS_MODULE": "ringside.settings", "SECRET_KEY": SECRET, **environment}
    command = [sys.executable, "manage.py", *arguments]
    return subprocess.run(command, cwd=ROOT, env={**clean, **given}, capture_output=True, text=True, check=False)


@pytest.fixture(scope="module")
def new_site(tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    """The variables of a site on an empty database."""
    folder = tmp_path_factory.mktemp("new")
    file = f"sqlite:///{folder / 'site.sqlite3'}"
    variables = {"DATABASE_URL": file, "ALLOWED_HOSTS": "ring.example", "STATIC_ROOT": str(folder / "static")}
    assert manage("prepare", **variables).returncode == 0
    return variables


def ask(address: str, site: dict[str, str], **environment: str) -> tuple[int, str]:
    """One page of the site with these variables beside its own."""
    code = (
        "from django.test import Client\n"
        f"r = Client(SERVER_NAME='ring.example').get({address!r}, secure=True)\n"
        "print(r.status_code); print(r.content.decode())"
    )
    done = manage("shell", "--no-imports", "-c", code, **site, **environment)
    assert done.returncode == 0, done.stderr
    status, _, page = done.stdout.partition("\n")
    return int(status), page


def test_check_deploy_is_clean():
    done = manage("check", "--deploy", "--fail-level", "WARNING", ALLOWED_HOSTS="ring.example")
    assert done.returncode == 0, done.stderr


def test_without_a_secret_key_it_says_what_to_do():
    done = manage("check", SECRET_KEY="")
    assert done.returncode != 0
    assert "Set the environment variable SECRET_KEY" in done.stderr


def test_outside_the_demo_its_doors_do_not_exist(new_site):
    status, page = ask("/", new_site)
    assert status == 200
    assert "/demo/" not in page
    assert ask("/demo/judge/", new_site)[0] == 404


def test_a_new_installation_says_how_to_begin(new_site):
    assert "manage.py first_account" in ask("/", new_site)[1]


@pytest.mark.parametrize("address", ["/", "/sign-in/", "/nowhere/"])
def test_a_field_server_says_on_every_page_that_it_is_plain_http(new_site, address):
    assert "plain HTTP on a local network" in ask(address, new_site, FIELD="1")[1]


def test_the_demo_show_is_never_built_into_a_real_site(tmp_path):
    file = f"sqlite:///{tmp_path / 'site.sqlite3'}"
    done = manage("demo", DATABASE_URL=file)
    assert done.returncode != 0
    assert "does not belong into a real show" in done.stderr


def test_the_first_account_must_be_an_address():
    done = manage("first_account", "nobody")
    assert done.returncode != 0
    assert "not an e-mail address" in done.stderr
