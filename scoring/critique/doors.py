"""The door `critique`: a sheet in, its written critique out."""

from collections.abc import Mapping
from typing import Any

from scoring.bad_input import BadInput, a_list, a_string, an_int, an_object, join, one_of, value_of
from scoring.critique.compose import compose
from scoring.critique.lexicon import LANGUAGES, PLAIN, SEXES, STEPS, load, missing
from scoring.critique.said import SIDES, WAYS, Sheet, Way
from scoring.placing.assessment import TEETH, read_assessment
from scoring.standards.loader import codes
from scoring.standards.loader import load as load_standard
from scoring.standards.model import BreedStandard

LAST_PLACE = 1000
# So many missing words are named in a refusal.
NAMED = 5


def critique(source: Mapping[str, Any]) -> dict[str, Any]:
    """The critique's sentences and text. Raises BadInput where the sheet cannot be read against the standard,
    or a word of the language is missing.
    """
    standard = load_standard(one_of(value_of(source, "standard"), codes(), "standard"))
    language = one_of(value_of(source, "language"), LANGUAGES, "language")
    _check_words(language, standard)
    written = compose(standard, language, read_sheet(source, standard))
    return {"sentences": list(written.sentences), "text": written.text}


def _check_words(language: str, standard: BreedStandard) -> None:
    """Raises BadInput where the language's file lacks words that a sheet of the breed can ask for."""
    lacks = missing(language, standard)
    if lacks:
        more = f" and {len(lacks) - NAMED} more" if len(lacks) > NAMED else ""
        told = f"lexicon/{language}.toml lacks {', '.join(lacks[:NAMED])}{more}: write them there first."
        raise BadInput("missing-word", told, "language")


def read_sheet(source: Mapping[str, Any], standard: BreedStandard) -> Sheet:
    """The sheet in one JSON object. Besides what a merit is asked with: `sets`, a list by set point.

    A way of moving is a code, or {"way", "side"?: "left"|"right"|"both", "degree"?: 1..3}. An empty list says that
    the point was assessed and nothing was found. Raises BadInput.
    """
    one_of(value_of(source, "sex"), SEXES, "sex")
    sets = _sets(source, standard)
    teeth = sets[TEETH] if TEETH in sets else source.get("teeth_missing")
    grade, reason, place = (value_of(source, key, default=None) for key in ("grade", "reason", "place"))
    return Sheet(
        assessment=read_assessment({**source, "teeth_missing": teeth}, standard),
        praise=_praise(source, standard),
        teeth_seen=teeth is not None,
        ways=_ways(sets[WAYS], standard) if WAYS in sets else None,
        grade=None if grade is None else one_of(grade, load("en")["grades"], "grade"),
        reason=None if reason is None else a_string(reason, "reason"),
        place=None if place is None else an_int(place, "place", 1, LAST_PLACE),
    )


def _sets(source: Mapping[str, Any], standard: BreedStandard) -> dict[str, Any]:
    given = an_object(value_of(source, "sets", default={}), "sets")
    known = [point.code for point in standard.points if point.kind == "set"]
    return {one_of(code, known, join("sets", code)): value for code, value in given.items() if value is not None}


def _praise(source: Mapping[str, Any], standard: BreedStandard) -> frozenset[str]:
    known = [point.code for point in standard.points]
    given = a_list(value_of(source, "praise", default=[]), "praise")
    return frozenset(one_of(code, known, join("praise", index)) for index, code in enumerate(given))


def _ways(given: Any, standard: BreedStandard) -> tuple[Way, ...]:
    """The ways of moving in the standard's order, each once."""
    here = join("sets", WAYS)
    point = standard.point(WAYS)
    known = [option.code for option in point.options] if point else []
    found = {_way(value, known, join(here, index)) for index, value in enumerate(a_list(given, here))}
    return tuple(sorted(found, key=lambda way: (known.index(way.way), way.side or "", way.degree)))


def _way(value: Any, known: list[str], at: str) -> Way:
    if isinstance(value, str):
        return Way(one_of(value, known, at))
    told = an_object(value, at)
    side, degree = value_of(told, "side", at, None), value_of(told, "degree", at, PLAIN)
    return Way(
        one_of(value_of(told, "way", at), known, join(at, "way")),
        None if side is None else one_of(side, SIDES, join(at, "side")),
        an_int(degree, join(at, "degree"), 1, STEPS),
    )
