"""`make proof`: the long runs. CI runs the same code at a twentieth (--share 0.05)."""

import argparse
import os
import subprocess
import sys
import time
from collections.abc import Callable

from tests.browser import proof_show_day
from tests.home import proof_big_show
from tests.measuring import proof_coverage
from tests.papers import proof_papers
from tests.results import proof_opened_elsewhere
from tests.ring import proof_chaos


def property_tests(share: float) -> None:
    """Every property again with many more examples; below a tenth the ordinary test run has done as much."""
    if share < 0.1:
        print("Left to the ordinary test run at this share.")
        return
    command = [sys.executable, "-m", "pytest", "-q", "-n", "auto", "-m", "not browser and not both_databases"]
    subprocess.run(command, env={**os.environ, "HYPOTHESIS_PROFILE": "proof"}, check=True)


RUNS: dict[str, Callable[[float], object]] = {
    "Coverage of the 95 % interval of measured photos": proof_coverage.main,
    "A ring in chaos: three tablets, a bad network, a server killed": proof_chaos.main,
    "A show day without network, the browser killed": proof_show_day.main,
    "Every paper of 300 breeds and 3,000 dogs": proof_papers.main,
    "A whole show of 3,000 dogs from set-up to results": proof_big_show.main,
    "Tables opened and saved by LibreOffice": proof_opened_elsewhere.main,
    "Properties with a thousand examples": property_tests,
}


def main() -> None:
    reader = argparse.ArgumentParser(description=__doc__)
    reader.add_argument("--share", type=float, default=1.0, help="how much of each run, 1 is all of it")
    share = reader.parse_args().share
    for name, run in RUNS.items():
        print(f"\n== {name} (share {share:g})", flush=True)
        began = time.monotonic()
        run(share)
        print(f"   {time.monotonic() - began:.0f} s")


if __name__ == "__main__":
    main()
