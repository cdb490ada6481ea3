"""Every address of the site for every role, against the one table: allowed, refused with a reason, or not found."""

from collections.abc import Iterator

import pytest
from django.db import transaction
from django.http import HttpResponse
from django.test import Client
from django.urls import URLPattern, get_resolver, reverse

from ringside.shows.may import MAY
from ringside.shows.models import Role
from tests.access.expected import ACCOUNT, EXPECTED, IN_THE_SHOW, LEFT_OUT, LET_IN, OUTSIDE, verdict
from tests.access.places import Places

ROOMS_OF_A_SHOW = ("entries", "fees", "results", "ring-office", "timetable", "notices")
# A refusal says who may, or what is missing: one of these stands in each.
REASONS = ("does not let you", "You may not", "You are not appointed")


def addresses(resolver=None, space: str = "") -> Iterator[tuple[str, URLPattern]]:
    """Every address by the name that `reverse` knows."""
    for one in (resolver or get_resolver()).url_patterns:
        if isinstance(one, URLPattern):
            yield f"{space}{one.name}", one
        else:
            yield from addresses(one, f"{space}{one.namespace}:" if one.namespace else space)


ADDRESSES = dict(addresses())


def test_no_address_is_without_an_expectation():
    missing = sorted(ADDRESSES.keys() - EXPECTED.keys() - LEFT_OUT)
    assert missing == [], (
        f"No line says who is let in at {', '.join(missing)}. Add one for each to EXPECTED in "
        'tests/access/expected.py, as in "results:desk": get("see-office"); the top of that file says how.'
    )


def test_no_expectation_is_without_an_address():
    assert sorted((EXPECTED.keys() | LEFT_OUT) - ADDRESSES.keys()) == []


def test_every_address_has_a_name():
    assert [name for name in ADDRESSES if name.endswith("None")] == []


def test_every_rule_is_in_the_table_of_rights_or_explained():
    assert {one.rule for one in EXPECTED.values()} <= {*MAY, *LET_IN, ACCOUNT}


def test_every_role_of_a_show_is_tried():
    assert set(IN_THE_SHOW) == set(Role.Kind.values)


@pytest.fixture
def places(db):
    return Places()


ROOMS = sorted({name.partition(":")[0] for name in EXPECTED})


@pytest.mark.parametrize("room", ROOMS)
def test_each_role_is_let_in_or_turned_away_as_the_table_says(places, room):
    wrong = []
    # Addresses that exist in the demo only are left to the demo's own tests.
    for name in sorted(name for name in EXPECTED if name.partition(":")[0] == room and name in ADDRESSES):
        expected = EXPECTED[name]
        address = reverse(name, kwargs=parts_of(places, name))
        sent = {name: places.parts[name] for name in expected.sends}
        for who in (*IN_THE_SHOW, *OUTSIDE):
            answer = _ask(places.accounts[who], address, expected.method, sent)
            if expected.rule == ACCOUNT:
                is_right = answer.status_code in (200, 302)
            else:
                is_right = _verdict(answer) == verdict(expected.rule, who)
            if not is_right:
                wrong.append((who, address, answer.status_code))
    assert wrong == []


def parts_of(places: Places, name: str) -> dict[str, object]:
    given = {**places.parts, **EXPECTED[name].parts}
    return {part: given[part] for part in ADDRESSES[name].pattern.converters} | _outer(given, name)


def _outer(given: dict[str, object], name: str) -> dict[str, object]:
    """The parts that stand in the address of the room."""
    return {"slug": given["slug"]} if name.split(":")[0] in ROOMS_OF_A_SHOW else {}


def _ask(account, address: str, method: str, sent: dict[str, object]) -> HttpResponse:
    """One answer; whatever it changed is taken back, so that the next role finds everything as it was."""
    with transaction.atomic():
        client = Client()
        if account:
            client.force_login(account)
        answer = getattr(client, method)(address, sent)
        if answer.streaming:
            list(answer.streaming_content)
        transaction.set_rollback(True)
    return answer


def _verdict(answer: HttpResponse) -> str:
    if answer.status_code == 401 or (answer.status_code == 302 and answer.url.startswith("/sign-in/")):
        return "sign in"
    if answer.status_code == 403:
        words = answer.content.decode()
        assert any(reason in words for reason in REASONS), words
        return "refused"
    return "not found" if answer.status_code == 404 else "allowed"
