"""The list of dogs that were entered and not judged, each with the word that the rules keep apart."""

from collections.abc import Iterator

from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _
from reportlab.platypus import Spacer
from reportlab.platypus.flowables import Flowable

from ringside.papers.page import write
from ringside.papers.programme import Exhibit, Programme
from ringside.papers.styles import LINE
from ringside.papers.tables import NUMBER, TITLE, head_of, heading, ruled, text, width_of
from ringside.results.wording import presence_words

COLUMNS = (_("Number"), _("Dog"), _("Breed and class"), _("What happened"))
SHARES = (0.1, 0.36, 0.34, 0.2)
PART = 100


def absentees_pdf(programme: Programme, size: str = "A4") -> bytes:
    return write(list(_flow(programme, width_of(size))), heading(programme, gettext("Absentees")), size)


def absentees_of(programme: Programme) -> list[tuple[Exhibit, str, str]]:
    """Dog, breed with class, and the word for it; in catalogue order, withdrawn entries last."""
    found = [
        (dog, f"{breed.name}, {one.title}", presence_words(dog.presence))
        for breed, one, dog in programme.exhibits()
        if dog.presence != "present"
    ]
    return [
        *found,
        *((dog, f"{breed}, {title}", presence_words("withdrawn")) for breed, title, dog in programme.withdrawn),
    ]


def _flow(programme: Programme, width: float) -> Iterator[Flowable]:
    found = absentees_of(programme)
    yield Spacer(1, 10)
    yield text(gettext("Absentees"), TITLE)
    rule = gettext(
        "Absent is who never came into the ring. A dog that left it, or could not be judged, is in the results."
    )
    yield text(rule, LINE)
    yield Spacer(1, 8)
    if not found:
        yield text(gettext("Nobody is absent or withdrawn so far."), LINE)
    for start in range(0, len(found), PART):
        rows = [
            [text(dog.number, NUMBER), text(dog.name), text(place), text(word)]
            for dog, place, word in found[start : start + PART]
        ]
        yield ruled([head_of(COLUMNS), *rows], [share * width for share in SHARES])
