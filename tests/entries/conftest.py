"""A show that takes entries on the web, and somebody who enters."""

import pytest

from ringside.people.actions import account_for
from ringside.people.models import Account
from tests.entries.test_web import CLOSES, OPENS
from tests.shows_for_tests import SmallShow, small_show


@pytest.fixture
def at() -> SmallShow:
    at = small_show()
    at.show.entries_open, at.show.entries_close = OPENS, CLOSES
    at.show.save()
    return at


@pytest.fixture
def dora() -> Account:
    return account_for(email="dora@small.example")
