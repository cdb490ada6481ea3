"""Short ways to ask for a text, for the checklists of the languages."""

from scoring.critique.doors import critique
from scoring.critique.table import compiled, table_of
from scoring.standards.loader import codes
from tests.critique.sheets import EVERYTHING


def write(language, standard="rottweiler", sex="dog", **said):
    return critique({"standard": standard, "language": language, "sex": sex, "marks": {}, **said})["text"]


def short(language, point, key, sex="dog"):
    """The short wording of anything the vocabulary knows."""
    return table_of(EVERYTHING, language)["phrases"][sex][point][str(key)][0]


def full(language, point, key, sex="dog"):
    return table_of(EVERYTHING, language)["phrases"][sex][point][str(key)][1]


def everything_said(language):
    """Every wording of the language: of all points, of each breed's own words, of grades and places."""
    tables = [table_of(EVERYTHING, language), *(compiled(breed, language) for breed in codes())]
    for table in tables:
        for sex in ("dog", "bitch"):
            yield from (text for said in table["phrases"][sex].values() for pair in said.values() for text in pair[:2])
            yield from (*table["grades"][sex].values(), *table["places"][sex].values())
            yield from (words for section in table["sections"][sex].values() for words in section.values())
