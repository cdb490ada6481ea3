"""The words that are agreed to. A wording is never changed: a new one gets the next number, the old stays readable."""

from django.utils.translation import gettext
from django.utils.translation import gettext_noop as _

from ringside.entries.models import Consent

What = Consent.What
WORDINGS: dict[str, dict[int, str]] = {
    What.CATALOGUE_ADDRESS: {
        1: _("The catalogue of this show, on paper and as a file, may print the address given here beside my name.")
    },
    What.CRITIQUE_LINK: {
        1: _(
            "A link that you can withdraw. It shows the dog, the show, the result and the judge's text; nothing about "
            "you."
        )
    },
    What.PHOTO_LINK: {1: _("Whoever is given the address may see this photo and its reading, until I withdraw it.")},
    What.CRITIQUES_PUBLIC: {1: _("Everybody may read the written critiques of my dogs at this show.")},
    What.CRITIQUES_READER: {
        1: _(
            "Whoever signs in with the e-mail address given here may read this dog's published critiques, also later "
            "ones, until I withdraw it. The message to this address names me; the pages show nothing about me."
        )
    },
}
# What was agreed to before consents were kept: nobody wrote the words down.
UNKNOWN = 0


def latest(what: str) -> int:
    return max(WORDINGS[what])


def words_of(what: str, number: int) -> str:
    """The wording in the reader's language."""
    told = WORDINGS.get(what, {}).get(number)
    return gettext(told) if told else gettext("The words were not kept.")
