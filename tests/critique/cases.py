"""The cases that Python and the tablet's script share: sheets and the text of each in every language.

`python -m tests.critique.cases` writes them anew; read what changed before it is kept.
"""

import json
from pathlib import Path

from scoring.critique.compose import compose
from scoring.critique.doors import read_sheet
from scoring.critique.lexicon import LANGUAGES
from scoring.standards.loader import load

FILE = Path(__file__).with_name("cases.json")

SHEETS = {
    "a good Boxer dog": {
        "standard": "boxer",
        "sex": "dog",
        "marks": {
            "substance": 0, "proportions": 0, "muscle": 0, "skull": 0, "stop": 0, "muzzle-length": 1, "topline": 0,
            "croup": 1, "chest-depth": 0, "front-angulation": -1, "rear-angulation": 0, "reach": 0, "drive": 0,
        },
        "choices": {"bite": "undershot", "eye-colour": "dark", "temperament": "lively"},
        "praise": ["topline"],
        "grade": "excellent",
        "place": 1,
    },
    "a Rottweiler bitch with few points": {
        "standard": "rottweiler",
        "sex": "bitch",
        "marks": {"substance": -1, "skull": 0, "croup": 2, "forechest": -2, "hocks": 1, "reach": -1},
        "choices": {"bite": "scissor", "eye-colour": "light"},
        "grade": "very-good",
        "place": 3,
    },
    "a disqualified Bernese": {
        "standard": "bernese-mountain-dog",
        "sex": "dog",
        "marks": {"substance": 0, "topline": -3, "croup": 3},
        "choices": {"bite": "undershot", "temperament": "shy"},
        "teeth_missing": [411, 105, 205, 105],
        "yes": {"testicles": False},
        "grade": "disqualified",
        "reason": "Only one testicle can be felt;  the dog   backs away.",
    },
    "numbers, a full mouth and faulty ways of moving": {
        "standard": "hovawart",
        "sex": "bitch",
        "marks": {"substance": 1, "tail-carriage": 2, "reach": 0, "coat-length": 0},
        "numbers": {"height": 62.5},
        "teeth_missing": [],
        "sets": {
            "ways-of-moving": [
                "pacing",
                {"way": "elbows-loose", "side": "left", "degree": 1},
                {"way": "crabbing", "side": "right", "degree": 3},
                "pacing",
            ]
        },
        "grade": "good",
    },
    "nothing wrong with the way of moving, praise on a fault and on a choice": {
        "standard": "german-shepherd-dog",
        "sex": "dog",
        "marks": {"croup": -1, "drive": 0},
        "choices": {"ear-carriage": "erect", "temperament": "nervous"},
        "praise": ["croup", "drive", "ear-carriage", "temperament", "withers"],
        "sets": {"ways-of-moving": []},
        "teeth_missing": [305],
        "yes": {"testicles": True},
        "grade": "very-promising",
        "place": 12,
    },
    "a long head in two sentences, no general point": {
        "standard": "rottweiler",
        "sex": "dog",
        "marks": {"skull": 1, "stop": -1, "muzzle-length": -3, "muzzle-depth": 0},
        "choices": {"bite": "pincer", "eye-colour": "dark", "eyelids": "slack", "ear-carriage": "correct"},
    },
    "sex type alone": {
        "standard": "bernese-mountain-dog",
        "sex": "bitch",
        "marks": {},
        "choices": {"sex-type": "weak"},
        "reason": "not finished!",
    },
    "not to be judged": {
        "standard": "dachshund",
        "sex": "bitch",
        "marks": {},
        "grade": "cannot-be-judged",
        "reason": "does not let its teeth be seen",
    },
    "movement alone": {"standard": "dobermann", "sex": "bitch", "marks": {"reach": -2, "drive": 1}},
}  # fmt: skip


def composed(sheet, language):
    standard = load(sheet["standard"])
    return compose(standard, language, read_sheet(sheet, standard))


def made():
    """Every case with its sentences in every language, and the points that each sentence speaks of."""
    return [
        {
            "name": name,
            "sheet": sheet,
            "sentences": {language: list(composed(sheet, language).sentences) for language in LANGUAGES},
            "spans": [list(span) for span in composed(sheet, "en").spans],
        }
        for name, sheet in SHEETS.items()
    ]


def read():
    return json.loads(FILE.read_text(encoding="utf-8"))


if __name__ == "__main__":
    FILE.write_text(json.dumps(made(), ensure_ascii=False, indent=2) + "\n", encoding="utf-8")
