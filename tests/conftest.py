"""What every test shares: hypothesis profiles and how Chromium is started."""

import os
from typing import Any

import pytest
from django.utils import translation
from hypothesis import HealthCheck, settings

from ringside.core.tongues import compile_all
from tests.places import chromium

settings.register_profile("small", max_examples=50, deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.register_profile("proof", max_examples=1000, deadline=None, suppress_health_check=list(HealthCheck))
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "small"))

# Each of these keeps Chromium from asking any network for anything; the sandbox cannot start as root.
QUIET = ["--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-sync"]


def pytest_runtest_setup() -> None:
    """A page asked for in another language leaves that language active: no test reads the one before it."""
    translation.activate("en")


@pytest.fixture(scope="session", autouse=True)
def translations() -> None:
    """Pages in other languages need their messages compiled, as `manage.py prepare` does."""
    compile_all()


@pytest.fixture(scope="session")
def browser_type_launch_args(browser_type_launch_args: dict[str, Any]) -> dict[str, Any]:
    sandbox = ["--no-sandbox"] if os.geteuid() == 0 else []
    return {**browser_type_launch_args, "executable_path": chromium(), "args": [*QUIET, *sandbox]}
