"""The secretary's chair on a site, from outside: its commands, and actions behind the pages that have no command.

All in one process of the site, since starting one for each command would take longer than the command.
"""

import json
import subprocess
import sys
from collections.abc import Mapping
from typing import Any

from tests.served import ROOT, Site

ANSWER = "=> "


class Chair:
    """Asks the site and reads its answers; what is refused ends the run."""

    def __init__(self, site: Site) -> None:
        code = "from tests.home.big_show.desk import sit; sit()"
        self.process = subprocess.Popen(
            [sys.executable, "manage.py", "shell", "--no-imports", "-c", code],
            cwd=ROOT, env=site.environment, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True,
        )  # fmt: skip

    def __enter__(self) -> "Chair":
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def close(self) -> None:
        assert self.process.stdin
        self.process.stdin.close()
        self.process.wait(timeout=20)

    def manage(self, *words: str) -> str:
        return str(self._ask({"command": words}))

    def ask(self, **question: Any) -> Any:
        return self._ask(question)

    def _ask(self, question: Mapping[str, Any]) -> Any:
        assert self.process.stdin
        assert self.process.stdout
        self.process.stdin.write(f"{json.dumps(question)}\n")
        self.process.stdin.flush()
        for line in self.process.stdout:
            if line.startswith(ANSWER):
                said = json.loads(line.removeprefix(ANSWER))
                assert "refused" not in said, said["refused"]
                return said["said"]
        raise AssertionError(f"the site gave no answer to {question}")
