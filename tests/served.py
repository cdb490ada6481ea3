"""The real thing for tests: the server of a deployment, on a database of its own, with the demo show in it."""

import os
import signal
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import psycopg

ROOT = Path(__file__).resolve().parents[1]


@dataclass
class Site:
    """A served site: its address, the environment in which its commands run, and its server."""

    port: int
    environment: dict[str, str]
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
        self.process = subprocess.Popen(
            serve, cwd=ROOT, env=self.environment, stdout=subprocess.DEVNULL, start_new_session=True
        )
        _wait_for(self.address)

    def stop(self, by: signal.Signals = signal.SIGTERM) -> None:
        """Ends the server and its workers; SIGKILL gives them no time for anything."""
        if self.process is not None:
            os.killpg(self.process.pid, by)
            self.process.wait(timeout=20)
            self.process = None


@contextmanager
def served(folder: Path, server: str | None = None) -> Iterator[Site]:
    """A site with the demo show: on SQLite in the folder, or on a PostgreSQL server."""
    with ADatabase(folder, server) as url, AServer(_environment(folder, url)) as site:
        yield site


class ADatabase:
    """A SQLite file, or a database of its own on a PostgreSQL server."""

    def __init__(self, folder: Path, server: str | None) -> None:
        self.server = server
        self.name = f"ringside_{os.getpid()}_{folder.name}".replace("-", "_").lower()[:60]
        self.file = folder / "site.sqlite3"

    def __enter__(self) -> str:
        if not self.server:
            return f"sqlite:///{self.file}"
        self._run(f'create database "{self.name}"')
        return self.server.rpartition("/")[0] + "/" + self.name

    def __exit__(self, *_: object) -> None:
        if self.server:
            self._run(f'drop database if exists "{self.name}" with (force)')

    def _run(self, statement: str) -> None:
        assert self.server
        with psycopg.connect(self.server, autocommit=True) as connection:
            connection.execute(statement)  # type: ignore[call-overload]


def _environment(folder: Path, url: str) -> dict[str, str]:
    return {
        **os.environ,
        "DJANGO_SETTINGS_MODULE": "ringside.settings",
        "DATABASE_URL": url,
        "DEMO": "1",
        "SECRET_KEY": "only-for-tests-" + "y" * 50,
        "ALLOWED_HOSTS": "127.0.0.1",
        "STATIC_ROOT": str(folder / "static"),
        "MEDIA_ROOT": str(folder / "media"),
    }


class AServer:
    """Prepared, filled with the demo show and served by the same command as a deployment."""

    def __init__(self, environment: dict[str, str]) -> None:
        self.site = Site(_free_port(), environment)

    def __enter__(self) -> Site:
        self.site.manage("prepare")
        self.site.manage("demo")
        self.site.start()
        return self.site

    def __exit__(self, *_: object) -> None:
        self.site.stop()


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
