"""An edit that the office makes: like a tablet's, so that every tablet of the ring hears of it."""

import secrets
from collections.abc import Iterable
from typing import Any

from django.utils import timezone

from scoring.merging import replaces_for
from scoring.sheet import FORMAT, Edit

DEVICE = "office"


def office_edit(origin: str, sheet: str, field: str, value: Any, known: Iterable[Edit]) -> dict[str, Any]:
    """As `take_edits` takes it; it replaces what the sheet's known edits say of the field. Ids begin with `origin`."""
    return {
        "v": FORMAT,
        "id": f"{origin}-{secrets.token_hex(12)}",
        "sheet": sheet,
        "field": field,
        "value": value,
        "replaces": list(replaces_for(known, field)),
        "made_at": timezone.now().isoformat(),
        "device": DEVICE,
    }
