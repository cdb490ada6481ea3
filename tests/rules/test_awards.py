"""Who competes for an award."""

import pytest

from scoring.rules.awards import Round, Standing, candidates
from scoring.rules.loader import load
from scoring.rules.rulebook import Sex


def standing(
    entry: str, class_code: str, place: int | None, grade: str | None = "excellent", sex: Sex = "dog"
) -> Standing:
    return Standing(entry, sex, class_code, place, grade)


DOGS = [
    standing("puppy", "puppy", 1, "very-promising"),
    standing("junior", "junior", 1),
    standing("open-1", "open", 1),
    standing("open-2", "open", 2),
    standing("open-3", "open", 3),
    standing("working", "working", 1, "very-good"),
    standing("champion", "champion", 1),
    standing("champion-2", "champion", 2, "very-good"),
    standing("veteran", "veteran", 1),
]


@pytest.mark.parametrize(
    ("award", "expected"),
    [
        # Philippine and Singapore members, club copies of the FCI rules: Excellent and first of the class.
        ("cacib", ["open-1", "champion"]),
        ("cacib-j", ["junior"]),
        ("cacib-v", ["veteran"]),
        ("best-puppy", ["puppy"]),
        ("best-minor-puppy", []),
    ],
)
def test_certificates_are_for_the_first_of_their_classes_with_excellent(award: str, expected: list[str]) -> None:
    assert candidates(load("fci"), award, Round(DOGS, {})) == expected


@pytest.mark.parametrize(
    ("winner", "expected"),
    [("open-1", ["open-2", "champion"]), ("champion", ["open-1"]), (None, ["open-1", "champion"])],
)
def test_the_second_of_the_winners_class_competes_for_the_reserve(winner: str | None, expected: list[str]) -> None:
    # French rules on the CACIB and its reserve, club copy.
    given = {"cacib": [winner]} if winner else {}
    assert candidates(load("fci"), "reserve-cacib", Round(DOGS, given)) == expected


def test_best_of_sex_holds_the_winners_of_the_three_certificates() -> None:
    # Notice of an Australian state body on the FCI rule in force from 1 July 2023.
    given = {"cacib": ["champion"], "cacib-j": ["junior"], "cacib-v": ["veteran"]}
    assert {"champion", "junior", "veteran"} <= set(candidates(load("fci"), "best-of-sex", Round(DOGS, given)))


def test_a_german_honour_dog_competes_for_best_of_sex_and_not_for_the_cacib() -> None:
    # VDH Zuchtschau-Ordnung, section 50; German and Czech class lists.
    german = load("fci", overlays=("germany",))
    dogs = [*DOGS, standing("honour", "honour", 1)]
    assert "honour" in candidates(german, "best-of-sex", Round(dogs, {}))
    assert "honour" not in candidates(german, "cacib", Round(dogs, {}))


BOTH = [standing("he", "open", 1), standing("she", "open", 1, sex="bitch")]


def test_best_of_breed_is_between_the_best_of_each_sex() -> None:
    # VDH Zuchtschau-Ordnung, section 50: best male against best female, the other sex is best of opposite sex.
    fci, given = load("fci"), {"best-of-sex": ["he", "she"]}
    assert candidates(fci, "best-of-breed", Round(BOTH, given)) == ["he", "she"]
    assert candidates(fci, "best-opposite-sex", Round(BOTH, {**given, "best-of-breed": ["she"]})) == ["he"]
    assert candidates(fci, "best-opposite-sex", Round(BOTH, given)) == []


def test_canadian_champions_join_for_best_of_breed() -> None:
    # Canadian breeder's worked explanation: class dogs and champions are counted for best of breed.
    dogs = [*BOTH, standing("special", "specials-only", None, None)]
    given = {"winners": ["he", "she"], "best-of-breed": ["special"]}
    assert candidates(load("canada"), "best-of-winners", Round(dogs, given)) == ["he", "she"]
    assert candidates(load("canada"), "best-of-breed", Round(dogs, given)) == ["he", "she", "special"]
    assert candidates(load("canada"), "best-opposite-sex", Round(dogs, given)) == ["she"]


def test_an_unknown_award_is_a_key_error() -> None:
    with pytest.raises(KeyError):
        candidates(load("fci"), "best-in-moonlight", Round(DOGS, {}))
