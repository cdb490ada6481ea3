"""Sixty tablets at one edit a second each, on this one machine: how long an acknowledgement takes, and what it costs.

Traffic goes to a server that this run starts on the loopback address; it is bounded in count and time.
"""

import statistics
import threading
import time
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.places import postgres
from tests.ring.tablets_over_http import Lost, Tablet
from tests.served import Site, served

TABLETS, SECONDS, CLIENTS, RATE_SECONDS = 60, 12, 4, 3.0


def main() -> None:
    for name, server in (("SQLite", None), ("PostgreSQL", postgres())):
        if name == "SQLite" or server:
            with TemporaryDirectory() as folder, served(Path(folder), server) as site:
                print(f"{TABLETS} tablets at one edit a second, {name}: {acknowledgements(site)}")
                print(f"sync address beside the bare ring page, {name}: {rates(site):.2f} x its rate")


def acknowledgements(site: Site) -> str:
    """Milliseconds from sending one edit to its answer: the 50th, 95th and 99th of a hundred."""
    tablets = [_entered(site, n) for n in range(TABLETS)]
    sheets = [entry["sheet"] for one in tablets[0].day()["classes"] for entry in one["entries"]]
    taken: list[float] = []
    failed: list[Lost] = []

    def work(tablet: Tablet, delay: float) -> None:
        time.sleep(delay)
        for turn in range(SECONDS):
            began = time.perf_counter()
            tablet.set(sheets[(turn + tablet.made) % len(sheets)], "remark", f"{tablet.name} {turn}")
            try:
                tablet.send_newest()
                taken.append(time.perf_counter() - began)
            except Lost as lost:
                failed.append(lost)
            time.sleep(max(0.0, 1 - (time.perf_counter() - began)))

    _together([lambda tablet=tablet, n=n: work(tablet, n / TABLETS) for n, tablet in enumerate(tablets)])
    cuts = statistics.quantiles(taken, n=100)
    p50, p95, p99 = (1000 * cuts[at - 1] for at in (50, 95, 99))
    return f"p50 {p50:.0f} ms, p95 {p95:.0f} ms, p99 {p99:.0f} ms, {len(failed)} of {len(taken)} without answer"


def rates(site: Site) -> float:
    """How many answers a second the sync address gives, as a share of what the page without any data gives."""
    tablets = [_entered(site, 100 + n) for n in range(CLIENTS)]
    sheet = tablets[0].day()["classes"][0]["entries"][0]["sheet"]
    for tablet in tablets:
        tablet.send()

    def sync(tablet: Tablet) -> None:
        tablet.set(sheet, f"text.{'abcdefgh'[int(tablet.name[-1]) % 8]}x", tablet.made)
        tablet.send_newest()

    return _rate(tablets, sync) / _rate(tablets, lambda tablet: tablet.look("/ring/shell/"))


def _rate(tablets: list[Tablet], do: Callable[[Tablet], object]) -> float:
    until, counts = time.perf_counter() + RATE_SECONDS, [0] * len(tablets)

    def work(n: int) -> None:
        while time.perf_counter() < until:
            do(tablets[n])
            counts[n] += 1

    _together([lambda n=n: work(n) for n in range(len(tablets))])
    return sum(counts) / RATE_SECONDS


def _together(works: list[Callable[[], object]]) -> None:
    threads = [threading.Thread(target=work) for work in works]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()


def _entered(site: Site, n: int) -> Tablet:
    tablet = Tablet(site.address, 1, f"load-{n}", n)
    tablet.enter()
    return tablet
