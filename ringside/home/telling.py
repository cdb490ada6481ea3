"""Tells somebody whom an owner lets read a dog's critiques, in the language of their letters."""

from django.core.mail import send_mail
from django.db import transaction
from django.utils.translation import get_language, override
from django.utils.translation import gettext as _

from ringside.people.models import Account


def tell_reader(*, account: Account, dog: str, owner: str, where: str) -> None:
    """Sends the letter once it is certain; a mail server that is down never undoes it.

    Whoever has not chosen a language yet is written to in the one the owner reads.
    """
    with override(account.language or get_language()):
        subject = _("You may read the critiques of {dog}").format(dog=dog)
        parts = (
            _("{owner} lets you read the published critiques of {dog}, with the results and as PDFs."),
            _("Sign in with {email}; a code comes by e-mail, there is no password: {where}"),
            _(
                "The owner can take this back at any time. If you do not want it, you need not do anything. What this "
                "site keeps of you is shown, and deleted if you wish, under “What is kept of me” once you have signed "
                "in."
            ),
        )
        body = "\n\n".join(part.format(owner=owner, dog=dog, email=account.email, where=where) for part in parts)
    address = account.email
    transaction.on_commit(lambda: send_mail(" ".join(subject.split()), body, None, [address]), robust=True)
