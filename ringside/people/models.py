"""Accounts, which sign in, and people, who own, breed and judge dogs whether or not they have an account."""

from typing import Any

from django.conf import settings
from django.contrib.auth.models import AbstractBaseUser, BaseUserManager
from django.db import models
from django.db.models.functions import Lower
from django.utils.translation import gettext_lazy as _


def languages() -> list[tuple[str, str]]:
    """The site's languages by their own names: a critique is written in each, letters are sent in one."""
    return list(settings.LANGUAGES)


Language = models.TextChoices("Language", [(code.upper(), (code, name)) for code, name in languages()])


class AccountManager(BaseUserManager["Account"]):
    def create_user(self, email: str, **fields: Any) -> "Account":
        account = self.model(email=email.strip().lower(), **fields)
        account.set_unusable_password()
        account.save(using=self._db)
        return account


class Account(AbstractBaseUser):
    """Whoever can sign in. There is no password: sign-in is a code sent to the e-mail address."""

    email = models.EmailField(
        max_length=254, unique=True, error_messages={"unique": _("This address has an account already.")}
    )
    is_active = models.BooleanField(default=True)
    runs_site = models.BooleanField("may start new shows", default=False)
    # Empty where nobody has said: English then.
    language = models.CharField(max_length=2, choices=languages, blank=True)
    joined_at = models.DateTimeField(auto_now_add=True)

    USERNAME_FIELD = "email"
    REQUIRED_FIELDS = []
    objects = AccountManager()

    class Meta:
        constraints = [
            models.CheckConstraint(condition=models.Q(email=Lower("email")), name="account_email_is_lower_case"),
        ]

    def __str__(self) -> str:
        return self.email


class Person(models.Model):
    """An owner, breeder or judge, as named on papers."""

    name = models.CharField(max_length=120)
    email = models.EmailField(max_length=254, blank=True)
    country = models.CharField(max_length=60, blank=True)
    account = models.ForeignKey(Account, null=True, blank=True, on_delete=models.SET_NULL, related_name="people")

    class Meta:
        verbose_name_plural = "people"
        indexes = [models.Index(Lower("email"), name="person_email")]

    def __str__(self) -> str:
        return self.name
