"""Changes to people and accounts."""

from django.db import transaction

from ringside.people.models import Account, Language, Person


@transaction.atomic
def account_for(*, email: str) -> Account:
    """The account of an address, made where there is none, so that its owner can sign in with a code."""
    address = email.strip().lower()
    found = Account.objects.filter(email__iexact=address).first()
    return found or Account.objects.create_user(address)


def choose_language(*, account: Account, language: str) -> None:
    """The language of the letters to this account."""
    Account.objects.filter(pk=account.pk).update(language=Language(language))


@transaction.atomic
def person_for(*, name: str, email: str = "", country: str = "") -> Person:
    """The person of that name and address; the same name under another address is another person."""
    found = Person.objects.filter(name=name, email__iexact=email).order_by("id").first()
    if found:
        return found
    account = account_for(email=email) if email else None
    return Person.objects.create(name=name, email=email, country=country, account=account)
