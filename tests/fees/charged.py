"""A small show that charges: 40 for the first dog, 30 for each further one, 10 less for members; an account in euro."""

from datetime import date
from decimal import Decimal

from ringside.dogs.models import Ownership
from ringside.fees import setting
from ringside.people.models import Person
from tests.shows_for_tests import SmallShow, small_show

# The example of ISO 13616's registry for Germany.
IBAN = "DE89370400440532013000"


def charging_show() -> SmallShow:
    """Ada owns dogs 1 and 4; all classes open; nobody is a member yet."""
    at = small_show()
    who, show = at.accounts["secretary"], at.show
    Ownership.objects.filter(dog=at.entries[1].dog).update(person=ada_of(at))
    setting.set_terms(
        who=who, show=show, currency="EUR", club="Small Club", issuer="Small Club\nMeadow Road 1",
        account_holder="Small Club", iban=IBAN, bic="", pay_by=date(2026, 6, 1), note="",
    )  # fmt: skip
    for turn, membership, amount in (
        ("first-dog", "other", 40), ("first-dog", "member", 30), ("further-dog", "other", 30),
        ("further-dog", "member", 20), ("further-class", "", 15),
    ):  # fmt: skip
        setting.add_line(
            who=who, show=show, name=f"{turn} {membership}".strip(), amount=Decimal(amount), turn=turn,
            membership=membership, classes=[], first_day=None, last_day=None,
        )  # fmt: skip
    return at


def ada_of(at: SmallShow) -> Person:
    return at.entries[0].dog.owners.get()
