"""Every rule answers with reasons: a stable code, a severity and the facts that a sentence is made of."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

Severity = Literal["refuses", "warns", "notes"]


@dataclass(frozen=True, slots=True)
class Finding:
    """One reason. `code` is kebab case and never changes; the words for it live in the shell."""

    code: str
    severity: Severity
    facts: Mapping[str, Any] = field(default_factory=dict)

    def as_json(self) -> dict[str, Any]:
        return {"code": self.code, "severity": self.severity, "facts": dict(self.facts)}


def refuses(code: str, **facts: Any) -> Finding:
    return Finding(code, "refuses", facts)


def warns(code: str, **facts: Any) -> Finding:
    return Finding(code, "warns", facts)


def notes(code: str, **facts: Any) -> Finding:
    return Finding(code, "notes", facts)
