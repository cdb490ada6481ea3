"""`make bench`: ratios measured in one run on one machine, never absolute claims."""

import json
import os
import statistics
import subprocess
import sys
import time
from collections.abc import Callable

from tests.browser import bench_tap
from tests.ring import bench_load


def median(run: Callable[[], object], times: int = 7) -> float:
    run()
    taken = []
    for _ in range(times):
        began = time.perf_counter()
        run()
        taken.append(time.perf_counter() - began)
    return statistics.median(taken)


def merging() -> None:
    """Merging 2,000 edits of one sheet, beside reading and writing the same edits as JSON."""
    from scoring.merging import merge
    from scoring.sheet import read_edit

    raw = [_edit(n) for n in range(2000)]
    edits = [read_edit(one) for one in raw]
    ratio = median(lambda: merge(edits)) / median(lambda: json.loads(json.dumps(raw)))
    print(f"merge of 2,000 edits: {ratio:.2f} x their JSON round trip")


def _edit(n: int) -> dict[str, object]:
    replaces = [f"e{n - 20}"] if n >= 20 else []
    return {
        "v": 1, "id": f"e{n}", "sheet": "entry:1", "field": f"mark.point-{n % 20}", "value": n % 7 - 3,
        "replaces": replaces, "made_at": "2026-06-13T09:00:00Z", "device": "bench",
    }  # fmt: skip


def placing() -> None:
    """Proposing an order for 60 dogs, beside one for 6."""
    from scoring.placing.doors import place

    ratio = median(lambda: place(_class(60))) / median(lambda: place(_class(6)))
    print(f"place of 60 dogs: {ratio:.1f} x a class of 6")


def _class(dogs: int) -> dict[str, object]:
    points = ("croup", "topline", "reach", "drive", "rear-angulation", "front-angulation")
    marks = [{point: (n * 5 + index) % 7 - 3 for index, point in enumerate(points)} for n in range(dogs)]
    sheets = [{"entry": str(n), "sex": "dog", "grade": "excellent", "marks": one} for n, one in enumerate(marks)]
    return {"rules": "fci", "standard": "boxer", "sheets": sheets}


def doors() -> None:
    """Starting a door, beside starting Python alone."""
    bare = median(lambda: subprocess.run([sys.executable, "-c", "pass"], check=True), 5)
    standards = [sys.executable, "-m", "scoring", "standards"]
    door = median(lambda: subprocess.run(standards, input=b"{}", stdout=subprocess.DEVNULL, check=True), 5)
    print(f"python -m scoring standards: {door / bare:.1f} x starting Python")


def main() -> None:
    print(f"Ratios measured in this run, {os.cpu_count()} cores.")
    for run in (merging, placing, doors, bench_tap.main, bench_load.main):
        run()


if __name__ == "__main__":
    main()
