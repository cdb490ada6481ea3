"""A browser that lost its cookies: one page gets a token while another still sends without."""

import pytest
from django.test import Client
from django.urls import reverse

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize("ask", ["get", "post"])
def test_a_tablet_that_is_refused_is_given_no_token(ask: str) -> None:
    browser = Client(enforce_csrf_checks=True)
    answer = getattr(browser, ask)(reverse("ring:edits", args=[1]), headers={"Accept": "application/json"})
    assert (answer.status_code in (401, 403), answer.cookies.get("csrftoken")) == (True, None)
    assert answer.json()["error"]


def test_a_page_that_is_refused_says_what_to_do() -> None:
    answer = Client(enforce_csrf_checks=True).post(reverse("account_login"), {"email": "a@example.org"})
    assert answer.status_code == 403
    assert "reload the page" in answer.text
