"""The words of a critique, one TOML file a language, compiled to whole phrases per point, step and sex.

A phrase is a fragment without a full stop, in two wordings: a short one and a full one.
"""

import re
import tomllib
from collections.abc import Callable, Iterator, Mapping
from functools import lru_cache
from importlib.resources import files
from typing import Any, cast

from scoring.standards.model import BreedStandard, Point, Sex

LEXICONS = files("scoring.critique").joinpath("lexicon")
# Each file is a language.
LANGUAGES = tuple(sorted(one.name.removesuffix(".toml") for one in LEXICONS.iterdir() if one.name.endswith(".toml")))
SEXES: tuple[Sex, ...] = ("dog", "bitch")
PLAIN, STEPS = 2, 3
PRAISE = "praise"
PAIR = 2

Words = Mapping[str, Any]
Pair = tuple[str, str]

BY_STEP = re.compile(r"\{([^{}|]*)\|([^{}|]*)\|([^{}|]*)\}")
BY_SEX = re.compile(r"<([^<>|]*)\|([^<>|]*)>")


class MissingWord(LookupError):
    """The lexicon of a language has no words for something a sheet can say."""


@lru_cache(maxsize=len(LANGUAGES))
def load(language: str) -> Words:
    """The lexicon of a language as its file tells it. Raises MissingWord for a language without one."""
    if language not in LANGUAGES:
        raise MissingWord(f'There is no lexicon "{language[:20]}". Known: {", ".join(LANGUAGES)}.')
    return tomllib.loads(LEXICONS.joinpath(f"{language}.toml").read_text(encoding="utf-8"))


def keys_of(point: Point) -> tuple[str, ...]:
    """Everything a sheet can say of a point: "-3".."3" of a two-sided one, the options of a choice, and praise."""
    return (*KEYS[point.kind](point), PRAISE)


def pair(words: Words, breed: str, point: Point, key: str, sex: Sex) -> Pair:
    """The two wordings of one thing said of a point. Raises MissingWord."""
    told = words_of(words, breed, point.code)
    try:
        short, full = TEMPLATES[point.kind](words, told, point, key)
    except (KeyError, ValueError):
        raise MissingWord(f"{point.code}.{key}") from None
    step = step_of(key)
    return spoken(short, sex, step), spoken(full, sex, step)


def words_of(words: Words, breed: str, point: str) -> Words:
    """A point's words: those that hold for this breed over those that hold for all."""
    own = words.get("breeds", {}).get(breed, {}).get("points", {}).get(point, {})
    general = words.get("points", {}).get(point, {})
    options = {
        option: {**general["options"].get(option, {}), **said} for option, said in own.get("options", {}).items()
    }
    return {**general, **own, "options": {**general.get("options", {}), **options}}


def spoken(template: str, sex: Sex, step: int = PLAIN) -> str:
    """The template for one sex and a number of steps from what is asked."""
    text = BY_STEP.sub(lambda found: found.group(step), template)
    text = BY_SEX.sub(lambda found: found.group(SEXES.index(sex) + 1), text)
    return " ".join(text.split())


def step_of(key: str) -> int:
    """How many steps a key speaks of: 3 for "-3", 1 for "pacing/1", else the plain wording."""
    last = key.rpartition("/")[2]
    return abs(int(last)) if last.lstrip("-").isdigit() and last != "0" else PLAIN


def missing(language: str, standard: BreedStandard) -> list[str]:
    """What the lexicon of a language lacks to say everything that a sheet of this breed can say; empty if nothing."""
    words = load(language)
    return [*_unsaid_points(words, standard), *_unsaid_framework(words, standard)]


def _unsaid_points(words: Words, standard: BreedStandard) -> Iterator[str]:
    for point in standard.points:
        for key in keys_of(point):
            try:
                said = pair(words, standard.code, point, key, "dog")
            except MissingWord as lack:
                yield str(lack)
            else:
                yield from () if all(said) else (f"{point.code}.{key}",)


def _unsaid_framework(words: Words, standard: BreedStandard) -> Iterator[str]:
    for name, keys in FRAMEWORK.items():
        table = words.get(name, {})
        yield from (f"{name}.{key}" for key in keys.split() if not table.get(key))
    yield from (name for name in ALONE if not words.get(name))


ALONE = ("comma", "and", "last", "colon", "subject", "reason", "decimal")
FRAMEWORK: Mapping[str, str] = {
    "patterns": "fault fuller praise praised praised-fault",
    "standing": "serious-fault disqualifying-fault",
    "sections": "any",
    "grades": "excellent very-good good sufficient disqualified cannot-be-judged "
    "very-promising promising less-promising",
    "places": "1 2 3 4 further",
    "sides": "left right both",
    "teeth": "names places full",
}


# What each kind of point can say.


def _mark_keys(_: Point) -> tuple[str, ...]:
    return tuple(str(mark) for mark in range(-STEPS, STEPS + 1))


def _option_keys(point: Point) -> tuple[str, ...]:
    return tuple(option.code for option in point.options)


def _set_keys(point: Point) -> tuple[str, ...]:
    if not point.options:
        return ("none", "one", "several")
    return ("none", *(f"{option.code}/{step}" for option in point.options for step in range(1, STEPS + 1)))


KEYS: Mapping[str, Callable[[Point], tuple[str, ...]]] = {
    "two-sided": _mark_keys,
    "choice": _option_keys,
    "set": _set_keys,
    "number": lambda _: ("said",),
    "yes-no": lambda _: ("yes", "no"),
}


# Where the template of each kind of point stands in the file.


def _mark(words: Words, told: Words, point: Point, key: str) -> Pair:
    if key == PRAISE:
        return _praise(words, told, point)
    if key == "0":
        return _two(told["right"])
    end = told["low" if key.startswith("-") else "high"]
    short = end.get("short") or _filled(words["patterns"]["fault"], words, told, end)
    full = end.get("full") or _filled(_turn(words, "fuller", point), words, told, end)
    return short, full


def _choice(words: Words, told: Words, point: Point, key: str) -> Pair:
    if key == PRAISE:
        return _praise(words, told, point)
    option, said = point.option(key), told["options"][key]
    asked = option is not None and option.standing == "asked"
    return _two(said["asked"] if asked and "asked" in said else said["plain"])


def _set(words: Words, told: Words, point: Point, key: str) -> Pair:
    if key == PRAISE:
        return _praise(words, told, point)
    return _two(told["options"][key.partition("/")[0]]["plain"] if "/" in key else told[key])


def _plain(words: Words, told: Words, point: Point, key: str) -> Pair:
    return _praise(words, told, point) if key == PRAISE else _two(told[key])


TEMPLATES = {"two-sided": _mark, "choice": _choice, "set": _set, "number": _plain, "yes-no": _plain}


def _praise(words: Words, told: Words, point: Point) -> Pair:
    if PRAISE in told:
        return _two(told[PRAISE])
    short, full = _two(_turn(words, PRAISE, point))
    return short.replace("{noun}", told["noun"]), full.replace("{noun}", told["noun"])


def _turn(words: Words, pattern: str, point: Point) -> Any:
    """The patterns take turns through the file, so that neighbouring points are not said in the same words."""
    turns = words["patterns"][pattern]
    return turns[list(words["points"]).index(point.code) % len(turns)]


def _filled(pattern: str, words: Words, told: Words, end: Words) -> str:
    adjective = end["adj"]
    more = end.get("more") or words["patterns"]["more"].replace("{adj}", adjective)
    return pattern.replace("{noun}", told["noun"]).replace("{adj}", adjective).replace("{more}", more)


def _two(told: Any) -> Pair:
    if not isinstance(told, list) or len(told) != PAIR:
        raise ValueError("a wording is a pair, short and full")
    return cast(Pair, tuple(told))
