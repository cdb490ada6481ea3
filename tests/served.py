"""The real thing for tests: the server of a deployment, on a database of its own, with the demo show in it."""

import atexit
import fcntl
import os
import shutil
import signal
import socket
import subprocess
import sys
import tempfile
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import psycopg

ROOT = Path(__file__).resolve().parents[1]
PRINTED = "printed.txt"
MOULDS = "RINGSIDE_MOULDS"


@dataclass
class Site:
    """A served site: its address, the environment in which its commands run, and its server.

    What the server prints is kept in a file, letters among it where no mail server is named.
    """

    port: int
    environment: dict[str, str]
    printed: Path
    process: subprocess.Popen[bytes] | None = None

    @property
    def address(self) -> str:
        return f"http://127.0.0.1:{self.port}"

    def manage(self, *arguments: str) -> str:
        command = [sys.executable, "manage.py", *arguments]
        done = subprocess.run(command, cwd=ROOT, env=self.environment, capture_output=True, text=True, check=True)
        return done.stdout

    def start(self) -> None:
        serve = [sys.executable, "manage.py", "serve", "--port", str(self.port)]
        with self.printed.open("ab") as target:
            self.process = subprocess.Popen(
                serve, cwd=ROOT, env=self.environment, stdout=target, start_new_session=True
            )
        _wait_for(self.address)

    def stop(self, by: signal.Signals = signal.SIGTERM) -> None:
        """Ends the server and its workers; SIGKILL gives them no time for anything."""
        if self.process is not None:
            os.killpg(self.process.pid, by)
            self.process.wait(timeout=60)
            self.process = None


@contextmanager
def served(folder: Path, server: str | None = None) -> Iterator[Site]:
    """A site with the demo show: on SQLite in the folder, or on a PostgreSQL server."""
    mould = _mould(server)
    site = Site(_free_port(), _environment(folder, mould.folder, _copy(mould, folder)), folder / PRINTED)
    try:
        site.start()
        yield site
    finally:
        site.stop()
        _drop(site.environment["DATABASE_URL"])


@contextmanager
def unprepared(folder: Path, server: str | None = None) -> Iterator[Site]:
    """A site on a new, empty database, its server not started."""
    url = _new_database(folder, server)
    site = Site(_free_port(), _environment(folder, folder, url), folder / PRINTED)
    try:
        yield site
    finally:
        site.stop()
        _drop(url)


@dataclass(frozen=True)
class Mould:
    """A site as it stands before anybody came: its folder, its database, and the server that one is on."""

    folder: Path
    url: str
    server: str | None


@cache
def _mould(server: str | None) -> Mould:
    """Filled once for all processes of a test run that has a folder for moulds, else once for this process."""
    if MOULDS not in os.environ:
        folder = Path(tempfile.mkdtemp(prefix="ringside-mould-"))
        mould = _filled(folder, server)
        atexit.register(lambda: (_drop(mould.url), shutil.rmtree(folder, ignore_errors=True)))
        return mould
    folder = Path(os.environ[MOULDS]) / ("postgres" if server else "sqlite")
    folder.mkdir(exist_ok=True)
    told = folder / "url"
    with (folder / "lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not told.exists():
            told.write_text(_filled(folder, server).url)
    return Mould(folder, told.read_text(), server)


def _filled(folder: Path, server: str | None) -> Mould:
    """Prepared and filled by a deployment's own commands."""
    url = _new_database(folder, server)
    site = Site(0, _environment(folder, folder, url), folder / PRINTED)
    site.manage("prepare")
    site.manage("demo")
    return Mould(folder, url, server)


@contextmanager
def shared_moulds() -> Iterator[None]:
    """Processes started inside fill each mould once for all of them."""
    with tempfile.TemporaryDirectory(prefix="ringside-moulds-") as folder:
        os.environ[MOULDS] = folder
        try:
            yield
        finally:
            del os.environ[MOULDS]
            for told in Path(folder).glob("*/url"):
                _drop(told.read_text())


def _copy(mould: Mould, folder: Path) -> str:
    """The address of a copy of the mould's database; its files are copied into the folder too."""
    if (mould.folder / "media").exists():
        shutil.copytree(mould.folder / "media", folder / "media")
    if mould.server:
        return _new_database(folder, mould.server, of=mould.url.rpartition("/")[2])
    for file in mould.folder.glob("site.sqlite3*"):
        shutil.copy(file, folder / file.name)
    return f"sqlite:///{folder / 'site.sqlite3'}"


def _new_database(folder: Path, server: str | None, of: str = "template1") -> str:
    """A SQLite file in the folder, or a database of its own on a PostgreSQL server."""
    if not server:
        return f"sqlite:///{folder / 'site.sqlite3'}"
    name = f"ringside_{os.getpid()}_{folder.name}".replace("-", "_").lower()[:60]
    _run(server, f'create database "{name}" template "{of}"')
    return f"{server.rpartition('/')[0]}/{name}"


def _drop(url: str) -> None:
    if url.startswith("postgres"):
        server, _, name = url.rpartition("/")
        _run(f"{server}/postgres", f'drop database if exists "{name}" with (force)')


def _run(server: str, statement: str) -> None:
    with psycopg.connect(server, autocommit=True) as connection:
        connection.execute(statement)  # type: ignore[call-overload]


def _environment(folder: Path, mould: Path, url: str) -> dict[str, str]:
    return {
        **os.environ,
        "DJANGO_SETTINGS_MODULE": "ringside.settings",
        "DATABASE_URL": url,
        "DEMO": "1",
        "SECRET_KEY": "only-for-tests-" + "y" * 50,
        "ALLOWED_HOSTS": "127.0.0.1,laptop.example",
        "STATIC_ROOT": str(mould / "static"),
        "MEDIA_ROOT": str(folder / "media"),
    }


def _free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port: int = probe.getsockname()[1]
        return port


def _wait_for(address: str) -> None:
    """Asks until the server answers; a minute at most."""
    until = time.monotonic() + 60
    while True:
        try:
            urllib.request.urlopen(address, timeout=5).close()
            return
        except (urllib.error.URLError, OSError):
            if time.monotonic() > until:
                raise
            time.sleep(0.1)
