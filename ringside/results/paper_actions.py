"""A class judged on paper: typed in from the page that the judge signed, with a photo of that page."""

import uuid
from collections.abc import Mapping
from typing import Any

from django.core.files.base import ContentFile
from django.db import transaction
from django.utils import timezone

from ringside.core.audit import record
from ringside.core.denied import NotNow
from ringside.core.intake import take
from ringside.people.models import Account, Person
from ringside.results.corrections import Result, check_results
from ringside.results.models import PaperClass, Publication, SignedPage
from ringside.results.paper_page import PAGE
from ringside.ring.from_paper import is_signed_at_ring, write_from_paper
from ringside.shows.access import require
from ringside.shows.models import ShowClass


@transaction.atomic
def type_class(
    *, who: Account, show_class: ShowClass, results: Mapping[int, Result], page: bytes | None = None, why: str = ""
) -> PaperClass:
    """Writes the class as the judge's page has it, each dog by its entry's id.

    It counts as signed once a photo or PDF of the page is there, or `why` says why there is none; both may come later.
    Typed again before publishing, it replaces what was typed. NotNow where the judge signed on a tablet, or judge or
    ring are not known; Denied where the file is none.
    """
    show = show_class.show_breed.show
    require(who, show, "type-classes")
    ShowClass.objects.select_for_update().get(pk=show_class.pk)
    _require_open(show_class)
    told = show_class.appointed
    if told.judge is None or told.ring is None:
        raise NotNow("This class has no judge or no ring yet: appoint them on the set-up page.")
    check_results(show_class, list(results.values()))
    paper = PaperClass.objects.filter(show_class=show_class).first() or PaperClass(show_class=show_class)
    attest(paper, judge=told.judge, who=who, page=page, why=why)
    fields = _fields(results)
    write_from_paper(who=who, ring=told.ring, judged=show_class, fields=fields, sign=paper.is_attested)
    about = f"class:{show_class.pk}"
    record(who=who, doing="type-class", show_id=show.pk, about=about, signed=paper.is_attested, page=bool(paper.page))
    return paper


def attest(paper: SignedPage, *, judge: Person, who: Account, page: bytes | None, why: str) -> None:
    """Writes down who signed, who typed, and the page or why there is none."""
    paper.judge, paper.typed_by, paper.typed_at = judge, who, timezone.now()
    if page is not None:
        _keep(paper, page)
    elif why.strip() and not paper.page:
        paper.why_no_page = why.strip()[:300]
    paper.save()


def _require_open(show_class: ShowClass) -> None:
    if Publication.objects.filter(show_class=show_class).exists():
        raise NotNow("This class is published already: what is wrong in it is corrected on its page.")
    if is_signed_at_ring(show_class):
        raise NotNow("The judge has signed this class on a tablet: it is not typed over. Ask the judge.")


def _fields(results: Mapping[int, Result]) -> dict[str, Any]:
    """The fields of the class card that say these results; None empties one."""
    places = {one.place: str(pk) for pk, one in results.items() if one.place}
    fields: dict[str, Any] = {"places": [places[place] for place in sorted(places)]}
    for pk, one in results.items():
        fields[f"presence.{pk}"] = one.presence if one.presence != "present" else None
        fields[f"grade.{pk}"] = one.grade or None
        fields[f"reason.{pk}"] = one.reason.strip() or None
    return fields


@transaction.atomic
def attach_page(*, who: Account, show_class: ShowClass, page: bytes) -> PaperClass:
    """Attaches the page of a published class that was typed without one. One that is there stays."""
    show = show_class.show_breed.show
    require(who, show, "type-classes")
    paper = PaperClass.objects.select_for_update().filter(show_class=show_class).first()
    if paper is None:
        raise NotNow("This class was not typed in from paper.")
    keep_first_page(paper, page)
    record(who=who, doing="attach-page", show_id=show.pk, about=f"class:{show_class.pk}")
    return paper


def keep_first_page(paper: SignedPage, page: bytes) -> None:
    """The page of what is published already; one that is there stays."""
    if paper.page:
        raise NotNow("The judge's page is here already: once published it stays.")
    _keep(paper, page)
    paper.save()


def _keep(paper: SignedPage, content: bytes) -> None:
    """In the place of an earlier one, whose file goes once this is certain. Why there was none stays written."""
    taken = take(content, PAGE)
    storage, before = paper.page.storage, paper.page.name
    if before:
        paper.public_id = uuid.uuid4()
        transaction.on_commit(lambda: storage.delete(before))
    paper.media_type = taken.media_type
    paper.page.save("", ContentFile(taken.content), save=False)
