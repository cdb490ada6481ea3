"""Which proofs an entry needs: by its class, under the rules in force, and by what the show asks."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from django.db.models import Exists, OuterRef, Q
from django.utils.translation import gettext

from ringside.core.sentences import listed
from ringside.entries.models import Entry, EntryTerms, Proof, ProofTick
from ringside.shows.books import rules_of
from ringside.shows.models import Show
from scoring.rules.rulebook import RuleBook

TITLE, VACCINATION = "title", "vaccination"


@dataclass(frozen=True)
class Need:
    """One proof that an entry needs, the owner's copies of it, and the office's tick, where there is one."""

    code: str
    words: str
    proofs: tuple[Proof, ...] = ()
    tick: ProofTick | None = None


def needs_by_class(show: Show) -> dict[str, dict[str, str]]:
    """For each class that asks for proofs, their codes and words."""
    book, vaccination = rules_of(show), vaccination_asked(show)
    asked = {rule.code: dict(_of_class(book, rule.code)) for rule in book.classes}
    if vaccination:
        asked = {
            code: {**needs, VACCINATION: gettext("Vaccination: {asked}").format(asked=vaccination)}
            for code, needs in asked.items()
        }
    return {code: needs for code, needs in asked.items() if needs}


def _of_class(book: RuleBook, code: str) -> Iterator[tuple[str, str]]:
    rule = book.class_rule(code)
    if rule.titles:
        names = {title.code: gettext(title.name) for title in book.titles}
        told = [names.get(title, title) for title in rule.titles]
        yield TITLE, gettext("Title: {titles}").format(titles=listed(told, gettext("or")))
    papers = {paper.code: paper.name for paper in book.documents}
    for document in rule.documents:
        yield f"certificate:{document}", gettext(papers.get(document, document))


def vaccination_asked(show: Show) -> str:
    """What the show asks of vaccination, in its own words, or nothing."""
    return EntryTerms.objects.filter(show=show).values_list("vaccination", flat=True).first() or ""


def needs_of(entries: Iterable[Entry], show: Show) -> dict[int, list[Need]]:
    """What each entry needs, by the entry's id, with what is there of it; three queries however many entries."""
    rows, asked = list(entries), needs_by_class(show)
    dogs = {entry.dog_id for entry in rows}
    proofs: dict[tuple[int, str], list[Proof]] = {}
    for proof in Proof.objects.filter(dog__in=dogs).order_by("sent_at", "id"):
        proofs.setdefault((proof.dog_id, proof.need), []).append(proof)
    ticks = {
        (tick.dog_id, tick.need): tick
        for tick in ProofTick.objects.filter(show=show, dog__in=dogs).select_related("by")
    }
    return {
        entry.pk: [
            Need(code, words, tuple(proofs.get((entry.dog_id, code), ())), ticks.get((entry.dog_id, code)))
            for code, words in asked.get(entry.show_class.code, {}).items()
        ]
        for entry in rows
    }


def proof_missing(show: Show) -> Q:
    """The entries of which at least one proof is not ticked off."""
    missing = Q(pk__in=[])
    for need, classes in _classes_by_need(needs_by_class(show)).items():
        ticked = ProofTick.objects.filter(show=show, dog=OuterRef("dog"), need=need)
        missing |= Q(show_class__code__in=classes) & ~Exists(ticked)
    return missing


def _classes_by_need(asked: Mapping[str, Mapping[str, str]]) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for class_code, needs in asked.items():
        for need in needs:
            found.setdefault(need, []).append(class_code)
    return found
