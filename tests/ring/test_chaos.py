"""A short run of the chaos that `make proof` runs whole, on both databases."""

from pathlib import Path

import pytest

from tests.places import postgres
from tests.ring import proof_chaos
from tests.served import served


@pytest.mark.parametrize("server", [None, "postgres"])
def test_nothing_acknowledged_is_lost_or_doubled_and_all_show_the_same(tmp_path: Path, server: str | None):
    address = postgres() if server else None
    if server and address is None:
        pytest.skip("no PostgreSQL server here")
    with served(tmp_path, address) as site:
        assert "none lost" in proof_chaos.run(site, share=0.01)
