"""What every statistic answers with: the value, its 95 % interval, and how both were found or why they were not."""

from dataclasses import dataclass
from typing import Any

Interval = tuple[float, float]
CONFIDENCE = 0.95


@dataclass(frozen=True, slots=True)
class Coefficient:
    """An agreement statistic. `value` and `interval` are None where they cannot be given; `method` then says why."""

    value: float | None
    interval: Interval | None
    method: str

    def as_json(self) -> dict[str, Any]:
        interval = None if self.interval is None else list(self.interval)
        return {"value": self.value, "interval": interval, "method": self.method}


def without_value(method: str, reason: str) -> Coefficient:
    return Coefficient(None, None, f"{method}. No value: {reason}.")


def with_interval(method: str, value: float, interval: Interval | str, how: str) -> Coefficient:
    """The value with its interval, or with the reason where `interval` is one."""
    if isinstance(interval, str):
        return Coefficient(value, None, f"{method}. No interval: {interval}.")
    return Coefficient(value, interval, f"{method}. 95 % interval: {how}.")
