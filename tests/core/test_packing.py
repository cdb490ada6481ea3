"""The ring's day goes over a field's network as tight as the browser takes it, and says the same either way."""

import gzip
import json

import brotli
import pytest
from django.test import Client

from tests.shows_for_tests import small_show

pytestmark = [pytest.mark.django_db]


def test_the_day_is_the_same_packed_one_way_the_other_or_not_at_all():
    at = small_show()
    client, address = Client(), f"/ring/{at.ring.pk}/day/"
    client.force_login(at.accounts["judge"])
    plain = client.get(address)
    tight = client.get(address, headers={"accept-encoding": "gzip, deflate, br"})
    loose = client.get(address, headers={"accept-encoding": "gzip"})
    assert "Content-Encoding" not in plain.headers
    assert (tight.headers["Content-Encoding"], loose.headers["Content-Encoding"]) == ("br", "gzip")
    assert "Accept-Encoding" in tight.headers["Vary"]
    assert len(tight.content) < len(loose.content) < len(plain.content)
    said = [plain.content, brotli.decompress(tight.content), gzip.decompress(loose.content)]
    assert [json.loads(content) == plain.json() for content in said] == [True] * 3


def test_a_refusal_is_told_unpacked():
    at = small_show()
    answer = Client().get(f"/ring/{at.ring.pk}/day/", headers={"accept-encoding": "br"})
    assert answer.status_code == 401
