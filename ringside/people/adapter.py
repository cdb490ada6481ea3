"""How sign-in differs from the library's defaults: nobody signs up, an entry makes the account."""

from typing import Any

from allauth.account.adapter import DefaultAccountAdapter
from django.http import HttpRequest


class Adapter(DefaultAccountAdapter):  # type: ignore[misc]
    def is_open_for_signup(self, request: HttpRequest) -> bool:
        return False

    def get_user_search_fields(self) -> list[str]:
        return ["email"]

    def populate_username(self, request: HttpRequest, user: Any) -> None:
        """There are no user names."""
