"""The command-line doors: `python -m scoring VERB`, one JSON object in, one out.

Exit 0 with an answer; exit 2 with {"error": {"code", "message", "at"}} where the input cannot be used.
"""

import json
import sys
from collections.abc import Callable, Mapping
from importlib import import_module
from typing import Any, TextIO

from scoring.bad_input import BadInput
from scoring.canonical import check_sound

Door = Callable[[Mapping[str, Any]], dict[str, Any]]

# Each verb's function lives beside the arithmetic it opens; only the one that is asked for is imported.
DOORS = {
    "standards": "scoring.standards.doors:standards",
    "classes": "scoring.rules.doors:classes",
    "merit": "scoring.placing.doors:merit",
    "place": "scoring.placing.doors:place",
    "merge": "scoring.sheet_door:merge",
    "measure": "scoring.measuring.doors:measure",
    "critique": "scoring.critique.doors:critique",
    "points": "scoring.rules.doors:points",
    "titles": "scoring.rules.doors:titles",
    "panel": "scoring.placing.panel_door:panel",
    "agreement": "scoring.agreement.doors:agreement",
    "timetable": "scoring.timetable.doors:timetable",
}
MOST_BYTES = 32 * 1024 * 1024


def open_door(verb: str) -> Door:
    module, _, name = DOORS[verb].partition(":")
    door: Door = getattr(import_module(module), name)
    return door


def answer(verb: str, text: str) -> dict[str, Any]:
    """The answer to one call. Raises BadInput, and nothing else, for an input that cannot be used."""
    if verb not in DOORS:
        raise BadInput("unknown-code", f'There is no verb "{verb[:60]}". Known: {", ".join(DOORS)}.', "verb")
    return open_door(verb)(read_object(text))


def read_object(text: str) -> Mapping[str, Any]:
    try:
        value = json.loads(text, parse_constant=_no_constant)
    except RecursionError:
        raise BadInput("not-json", "The input is nested too deeply.") from None
    except ValueError as error:
        raise BadInput("not-json", f"The input is not JSON: {error}.") from None
    if not isinstance(value, dict):
        raise BadInput("not-an-object", "Give one JSON object.")
    check_sound(value, "")
    return value


def _no_constant(name: str) -> float:
    raise ValueError(f"{name} is not a JSON number")


def main(arguments: list[str], source: TextIO, target: TextIO) -> int:
    try:
        if len(arguments) != 1:
            raise BadInput("unknown-code", f"Name one verb: {', '.join(DOORS)}.", "verb")
        text = source.read(MOST_BYTES + 1)
        if len(text) > MOST_BYTES:
            raise BadInput("too-large", "The input is larger than 32 million characters.")
        result, code = answer(arguments[0], text), 0
    except UnicodeDecodeError:
        result, code = BadInput("not-json", "The input is not UTF-8 text.").as_json(), 2
    except BadInput as error:
        result, code = error.as_json(), 2
    json.dump(result, target, ensure_ascii=False, allow_nan=False)
    target.write("\n")
    return code


if __name__ == "__main__":
    for stream in (sys.stdin, sys.stdout):
        stream.reconfigure(encoding="utf-8")  # type: ignore[union-attr]
    sys.exit(main(sys.argv[1:], sys.stdin, sys.stdout))
