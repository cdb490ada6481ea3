"""Publishing: from the judge's signed card to results and critiques that may be read."""

import hashlib
import json
from typing import Any

from django.db import transaction

from ringside.core import audit
from ringside.core.denied import NotNow
from ringside.core.sentences import apart
from ringside.people.models import Account, Language
from ringside.results.letters import tell_owners
from ringside.results.models import NEVER_THERE, Critique, Placing, Publication
from ringside.results.queries import Compiled, as_decisions, compiled
from ringside.results.wording import missing_of
from ringside.ring.advice import content_of
from ringside.ring.models import Edit, Sheet
from ringside.ring.tablets import holding_unsent
from ringside.shows.access import require
from ringside.shows.models import Ring, ShowClass
from scoring.critique.doors import critique as compose

LANGUAGES = tuple(Language.values)


@transaction.atomic
def publish_class(*, by: Account, show_class: ShowClass, site: str = "") -> Publication:
    """Makes a signed class's results and signed critiques readable. NotNow says what is still missing.

    `site` is the address that letters to the owners lead to; none are sent without it.
    """
    show = show_class.show_breed.show
    require(by, show, "publish-results")
    ShowClass.objects.select_for_update().get(pk=show_class.pk)
    found = compiled(show_class)
    if found.state == "published":
        raise NotNow("This class is published already.")
    if not found.is_complete:
        raise NotNow("This class cannot be published yet. Missing: {missing}.", missing=apart(all_missing(found)))
    require_all_sent(show_class.appointed.ring)
    _write_placings(found)
    publication = Publication.objects.create(show_class=show_class, by=by)
    written = freeze_critiques(show_class=show_class, found=found)
    audit.record(who=by, doing="publish class", show_id=show.pk, about=f"class:{show_class.pk}", critiques=written)
    tell_owners(by=by, show_class=show_class, entries=[row.entry.pk for row in found.rows], site=site)
    return publication


def require_all_sent(ring: Ring | None) -> None:
    """Nothing is published while a tablet of the ring holds what the server does not have."""
    waiting = holding_unsent(ring.pk) if ring else []
    if waiting:
        edits = sum(tablet.unsent for tablet in waiting)
        raise NotNow(
            "A tablet of this ring still holds {edits} edits that are not on the server. Bring it to the network, "
            "take its file in, or declare it lost on the rings' page.",
            edits=edits,
        )


def all_missing(found: Compiled) -> list[str]:
    """What the class lacks, and then each of its dogs."""
    return [
        *found.missing,
        *(missing_of(row.entry.number, ", ".join(row.missing)) for row in found.rows if row.missing),
    ]


@transaction.atomic
def publish_critiques(*, by: Account, show_class: ShowClass, site: str = "") -> int:
    """Freezes critiques signed since the class was published and tells their owners; how many there are now."""
    show = show_class.show_breed.show
    require(by, show, "publish-results")
    found = compiled(show_class)
    if found.state != "published":
        raise NotNow("Publish the class first; its critiques follow.")
    before = _frozen_in(show_class)
    written = freeze_critiques(show_class=show_class, found=found)
    audit.record(who=by, doing="publish critiques", show_id=show.pk, about=f"class:{show_class.pk}", critiques=written)
    tell_owners(by=by, show_class=show_class, entries=_frozen_in(show_class) - before, site=site)
    return written


def _frozen_in(show_class: ShowClass) -> set[int]:
    return set(Critique.objects.filter(entry__show_class=show_class).values_list("entry_id", flat=True))


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
    done = _frozen_in(show_class)
    sheets = Sheet.objects.filter(entry__show_class=show_class, signed__isnull=False).select_related("entry__dog")
    placings = list(Placing.objects.filter(show_class=show_class))
    # A sheet may have been signed before the dog was marked absent: what is not of this dog is not published.
    left_out = done | {placing.entry_id for placing in placings if placing.presence in NEVER_THERE}
    waiting = [sheet for sheet in sheets if sheet.entry_id not in left_out]
    judges = _signed_by([sheet.key for sheet in waiting])
    card = as_decisions(placings)
    for sheet in waiting:
        judge = judges.get(sheet.key)
        Critique.objects.bulk_create(_critique(sheet, card, language, judge) for language in LANGUAGES)
    return len(done) + len(waiting)


def _signed_by(keys: list[str]) -> dict[str, int | None]:
    """By the sheet's key: who judged there when its last signature came."""
    signatures = Edit.objects.filter(sheet__in=keys, field="signature", state=Edit.State.TAKEN).order_by("sequence")
    return dict(signatures.values_list("sheet", "judge_id"))


def _critique(sheet: Sheet, card: dict[str, Any], language: str, judge: int | None) -> Critique:
    paper = paper_of(sheet, card)
    sentences = sentences_of(sheet, paper, language)
    return Critique(
        entry=sheet.entry,
        language=language,
        sentences=sentences,
        paper=paper,
        fingerprint=fingerprint(sheet.entry.pk, paper, sentences),
        signed_at=sheet.signed_at,
        judge_id=judge,
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
        # A body without grades keeps none, which a published result holds as an empty text.
        "grade": card.get(f"grade.{key}") or None,
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
    """SHA-256 of what was signed. Names and addresses stay out, so that they can be erased and it still holds.

    A critique that came with its show from another site keeps the id under which it was signed there.
    """
    signed = {name: value for name, value in paper.items() if name != "signed_as"}
    content = json.dumps([paper.get("signed_as", entry_id), signed, sentences], sort_keys=True, ensure_ascii=False)
    return hashlib.sha256(content.encode()).hexdigest()
