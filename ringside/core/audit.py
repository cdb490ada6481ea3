"""Writes the audit line of an action, inside that action's transaction."""

from typing import Any

from django.contrib.auth.models import AnonymousUser

from ringside.core.models import AuditLine


def record(*, who: Any, doing: str, show_id: int | None = None, about: str = "", **detail: Any) -> None:
    """Who did what to which thing. `detail` must be JSON; personal values stay out so that they can be erased."""
    account = None if who is None or isinstance(who, AnonymousUser) else who
    scope = f"show:{show_id}" if show_id else "site"
    AuditLine.objects.create(who=account, doing=doing, scope=scope, about=about, detail=detail)
