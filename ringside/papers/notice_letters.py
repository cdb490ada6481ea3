"""The letter with number, ring and time on paper, for whoever cannot be reached by e-mail: one a page."""

from collections.abc import Iterator, Sequence

from django.utils import translation
from django.utils.translation import get_language
from django.utils.translation import gettext as _
from reportlab.platypus import KeepTogether, Spacer
from reportlab.platypus.flowables import Flowable

from ringside.entries.proofs.needs import vaccination_asked
from ringside.notices import wording
from ringside.notices.queries import Recipient
from ringside.papers.build import labels
from ringside.papers.page import Heading, show_days, write_book
from ringside.papers.styles import LINE
from ringside.papers.tables import BIG_NUMBER, NAME, TITLE, text
from ringside.shows.models import Show

# Where the fold of a letter in three shows the name through the window of its envelope, about.
ABOVE_NAME = 28


def notice_letters_pdf(show: Show, recipients: Sequence[Recipient], size: str = "A4") -> bytes:
    """The letters in order, each numbered from its own first page; an account's in its language, others in this one."""
    return write_book(_letters(show, recipients), _heading(show, ""), size)


def _letters(show: Show, recipients: Sequence[Recipient]) -> Iterator[tuple[list[Flowable], Heading]]:
    vaccination = vaccination_asked(show)
    for recipient in recipients:
        language = (recipient.account and recipient.account.language) or get_language() or "en"
        with translation.override(language):
            letter = list(_letter(show, recipient, vaccination)), _heading(show, recipient.name)
        yield letter


def _letter(show: Show, recipient: Recipient, vaccination: str) -> Iterator[Flowable]:
    yield Spacer(1, ABOVE_NAME)
    yield text(recipient.name or _("owner not named"), BIG_NUMBER)
    yield Spacer(1, ABOVE_NAME)
    yield text(wording.subject(show), TITLE)
    yield text(wording.opening(show, recipient), LINE)
    yield Spacer(1, 10)
    for dog in recipient.dogs:
        first, *rest = wording.dog_lines(dog)
        yield KeepTogether([text(first, NAME), *(text(line, LINE) for line in rest), Spacer(1, 8)])
    for line in wording.closing(vaccination):
        yield text(line, LINE)
        yield Spacer(1, 4)


def _heading(show: Show, name: str) -> Heading:
    days = show_days(show)
    language = get_language() or "en"
    title = ", ".join(filter(None, (wording.subject(show), name)))
    return Heading(
        title=title, author="", subject=days, language=language, left=title, right=days,
        pages=str(labels()[language]["pages"]),
    )  # fmt: skip
