"""Publishing: from the judge's signed card to results and critiques that may be read."""

import hashlib
import json
from typing import Any

from django.db import transaction

from ringside.core import audit
from ringside.core.denied import NotNow
from ringside.people.models import Account
from ringside.results.models import Critique, Placing, Publication
from ringside.results.queries import Compiled, as_decisions, compiled
from ringside.ring.advice import content_of
from ringside.ring.models import Sheet
from ringside.ring.tablets import holding_unsent
from ringside.shows.access import require
from ringside.shows.models import ShowClass
from scoring.critique.doors import critique as compose

LANGUAGES = ("en", "fr", "de", "es")


@transaction.atomic
def publish_class(*, by: Account, show_class: ShowClass) -> Publication:
    """Makes a signed class's results and signed critiques readable. NotNow says what is still missing."""
    show = show_class.show_breed.show
    require(by, show, "publish-results")
    ShowClass.objects.select_for_update().get(pk=show_class.pk)
    found = compiled(show_class)
    if found.state == "published":
        raise NotNow("This class is published already.")
    if not found.is_complete:
        raise NotNow(f"This class cannot be published yet. Missing: {'; '.join(all_missing(found))}.")
    _require_all_sent(show_class)
    _write_placings(found)
    publication = Publication.objects.create(show_class=show_class, by=by)
    written = freeze_critiques(show_class=show_class, found=found)
    audit.record(who=by, doing="publish class", show_id=show.pk, about=f"class:{show_class.pk}", critiques=written)
    return publication


def _require_all_sent(show_class: ShowClass) -> None:
    ring = show_class.show_breed.ring
    waiting = holding_unsent(ring.pk) if ring else []
    if waiting:
        edits = sum(tablet.unsent for tablet in waiting)
        raise NotNow(
            f"A tablet of this ring still holds {edits} edits that are not on the server. Bring it to the network, "
            "take its file in, or declare it lost on the rings' page."
        )


def all_missing(found: Compiled) -> list[str]:
    by_dog = [f"number {row.entry.number}: {', '.join(row.missing)}" for row in found.rows if row.missing]
    return [*found.missing, *by_dog]


@transaction.atomic
def publish_critiques(*, by: Account, show_class: ShowClass) -> int:
    """Freezes critiques signed since the class was published; how many there are now."""
    show = show_class.show_breed.show
    require(by, show, "publish-results")
    found = compiled(show_class)
    if found.state != "published":
        raise NotNow("Publish the class first; its critiques follow.")
    written = freeze_critiques(show_class=show_class, found=found)
    audit.record(who=by, doing="publish critiques", show_id=show.pk, about=f"class:{show_class.pk}", critiques=written)
    return written


def _write_placings(found: Compiled) -> None:
    Placing.objects.filter(show_class=found.show_class).delete()
    Placing.objects.bulk_create(
        Placing(
            show_class=found.show_class,
            entry=row.entry,
            presence=row.presence,
            grade=row.grade,
            reason=row.reason,
            place=row.place,
        )
        for row in found.rows
    )


def freeze_critiques(*, show_class: ShowClass, found: Compiled) -> int:
    """Writes every signed sheet of the class out in all languages, once; a frozen critique is never written again."""
    done = set(Critique.objects.filter(entry__show_class=show_class).values_list("entry_id", flat=True))
    sheets = Sheet.objects.filter(entry__show_class=show_class, signed__isnull=False).select_related("entry__dog")
    waiting = [sheet for sheet in sheets if sheet.entry_id not in done]
    card = as_decisions(Placing.objects.filter(show_class=show_class))
    for sheet in waiting:
        Critique.objects.bulk_create(_critique(sheet, card, language) for language in LANGUAGES)
    return len(done) + len(waiting)


def _critique(sheet: Sheet, card: dict[str, Any], language: str) -> Critique:
    paper = paper_of(sheet, card)
    sentences = sentences_of(sheet, paper, language)
    return Critique(
        entry=sheet.entry,
        language=language,
        sentences=sentences,
        paper=paper,
        fingerprint=fingerprint(sheet.entry.pk, paper, sentences),
        signed_at=sheet.signed_at,
    )


def paper_of(sheet: Sheet, card: dict[str, Any]) -> dict[str, Any]:
    """What the sheet and the class card say of one dog, as the core's `critique` takes it."""
    assert sheet.entry is not None
    signed, key = sheet.signed or {}, str(sheet.entry.pk)
    places = card.get("places") or []
    return {
        "standard": sheet.entry.dog.breed,
        "sex": sheet.entry.dog.sex,
        **content_of(signed),
        "praise": [name.partition(".")[2] for name, value in signed.items() if name.startswith("praise.") and value],
        "sets": {name[4:]: value for name, value in signed.items() if name.startswith("set.") and name != "set.teeth"},
        "remark": signed.get("remark") or "",
        "texts": {name[5:]: value for name, value in signed.items() if name.startswith("text.") and value},
        "grade": card.get(f"grade.{key}"),
        "reason": card.get(f"reason.{key}"),
        "place": places.index(key) + 1 if key in places else None,
    }


def sentences_of(sheet: Sheet, paper: dict[str, Any], language: str) -> list[str]:
    """The judge's own text in a language where there is one, otherwise the text made from the marks."""
    own = paper["texts"].get(language)
    if own:
        return [own]
    question = {k: v for k, v in paper.items() if k not in ("remark", "texts") and v is not None}
    written: list[str] = compose({**question, "language": language})["sentences"]
    return written


def fingerprint(entry_id: int, paper: dict[str, Any], sentences: list[str]) -> str:
    """SHA-256 of what was signed. Names and addresses stay out, so that they can be erased and it still holds."""
    content = json.dumps([entry_id, paper, sentences], sort_keys=True, ensure_ascii=False)
    return hashlib.sha256(content.encode()).hexdigest()
