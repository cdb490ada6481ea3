"""`make test`: everything on SQLite, models and actions again on PostgreSQL, the browser journeys last.

What the machine lacks is left out and named in the last lines; REQUIRE=browser,postgres fails instead.
"""

import os
import subprocess
import sys

from tests.places import chromium, postgres
from tests.served import shared_moulds


def pytest(*arguments: str, **environment: str) -> bool:
    print(f"\n== pytest {' '.join(arguments)}", *(f"{k}=..." for k in environment), flush=True)
    command = [sys.executable, "-m", "pytest", "-q", *arguments]
    return subprocess.run(command, env={**os.environ, **environment}, check=False).returncode == 0


def main() -> int:
    server, browser = postgres(), chromium()
    required = {part.strip() for part in os.environ.get("REQUIRE", "").split(",") if part.strip()}
    lacking = []
    if browser is None:
        lacking.append(("browser", "the browser journeys: no Chromium found (install it, or name it in CHROMIUM)"))
    if server is None:
        lacking.append(("postgres", "the runs on PostgreSQL: no server answers (name one in TEST_POSTGRES_URL)"))

    with shared_moulds():
        passed = [pytest("-n", "auto", "-m", "not browser")]
        if server:
            passed.append(pytest("-n", "auto", "-m", "both_databases and not browser", DATABASE_URL=server))
        if browser:
            database = {"BROWSER_DATABASE": server} if server else {}
            passed.append(pytest("-n", "auto", "--dist", "loadfile", "-m", "browser", **database))

    print()
    for _, words in lacking:
        print(f"Left out: {words}.")
    missing = sorted(required & {part for part, _ in lacking})
    if missing:
        print(f"Failed: REQUIRE asks for {', '.join(missing)}.")
    print("All that ran passed." if all(passed) else "Some tests failed, see above.")
    return 0 if all(passed) and not missing else 1


if __name__ == "__main__":
    sys.exit(main())
