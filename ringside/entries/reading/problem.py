"""How reading says that a file cannot be used."""

from typing import Any

from scoring.findings import Finding, refuses


class NotReadable(Exception):
    """The file as a whole cannot be read; `finding` says why."""

    def __init__(self, code: str, **facts: Any) -> None:
        super().__init__(code)
        self.finding: Finding = refuses(code, **facts)
