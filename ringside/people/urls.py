"""Sign-in by a code sent by e-mail. The names are those the sign-in library looks for."""

from allauth.account.views import confirm_login_code, logout, request_login_code
from django.urls import path
from django.views.generic import RedirectView

from ringside.people.views import language

to_sign_in = RedirectView.as_view(pattern_name="account_request_login_code", query_string=True)

urlpatterns = [
    path("", request_login_code, name="account_request_login_code"),
    path("code/", confirm_login_code, name="account_confirm_login_code"),
    path("out/", logout, name="account_logout"),
    path("login/", to_sign_in, name="account_login"),
    path("language/", language, name="language"),
    path("signup/", to_sign_in, name="account_signup"),
]
