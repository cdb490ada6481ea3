"""Invented shows for the tests of the office's papers, as small or as large as asked for."""

from datetime import date
from itertools import islice

from ringside.papers.programme import BreedList, ClassList, Exhibit, Programme, Scale, SheetForm

CLASSES = ("Puppy class", "Junior class", "Open class", "Champion class", "Veteran class")
SYLLABLES = ("ald", "bri", "cor", "dun", "esk", "fen", "gol", "hob", "ilm", "jor")
LONG_NAME = "Ch. Aurora Borealis of the Quiet Valley beyond the Seven Mills and the Old Stone Bridge " * 2
SCALES = tuple(
    Scale(f"Point {n}", "too little of it by far", "much too much of it, seen from the side") for n in range(24)
)
QUESTIONS = tuple((f"Question {n}", ("first answer", "second answer", "third answer")) for n in range(8))
FORM = SheetForm(SCALES, (*QUESTIONS, ("Height (cm)", ())))


def name_of(number: int) -> str:
    """A word for each number, so that no two breeds, dogs or owners share one."""
    digits = f"{number:04}"
    return "".join(SYLLABLES[int(digit)] for digit in digits).capitalize()


def exhibit(number: int, **changes) -> Exhibit:
    facts = {
        "number": str(number),
        "name": f"{name_of(number)} of the Meadow",
        "studbook": f"MB {number:05}/24",
        "born": date(2024, 3, 3),
        "months": 27,
        "sire": f"Sire {name_of(number + 3)}",
        "dam": f"Dam {name_of(number + 5)}",
        "breeder": f"Breeder {name_of(number // 7)}",
        "owners": (f"{name_of(number // 3)} Owner",),
        "grade": "Excellent",
        "place": number % 10 or None if number % 10 < 5 else None,
    }
    return Exhibit(**{**facts, **changes})


def programme(breeds: int, dogs: int, **changes) -> Programme:
    """`dogs` dogs spread evenly over `breeds` breeds, numbered from 1 in catalogue order."""
    numbers = iter(range(1, dogs + 1))
    lists = []
    for index in range(breeds):
        count = dogs // breeds + (index < dogs % breeds)
        lists.append(_breed(index, list(islice(numbers, count))))
    return Programme(**{"show": "Meadow Show", "days": "13 and 14 June 2026", "breeds": lists, **changes})


def _breed(index: int, numbers: list[int]) -> BreedList:
    half = len(numbers) // 2
    classes = [
        *_classes("dog", numbers[:half]),
        *_classes("bitch", numbers[half:]),
    ]
    return BreedList(
        group=f"Group {index // 30 + 1}",
        name=f"Breed {name_of(index)}",
        judge=f"Judge {name_of(index % 12)}",
        ring=f"Ring {index % 12 + 1}",
        day=date(2026, 6, 13),
        classes=classes,
        forms={"dog": FORM, "bitch": FORM},
        awards=("Certificate, dogs", "Certificate, bitches", "Best of breed"),
    )


def _classes(sex: str, numbers: list[int]) -> list[ClassList]:
    found = []
    for at, name in enumerate(CLASSES):
        dogs = [exhibit(number) for number in numbers[at :: len(CLASSES)]]
        if dogs:
            found.append(ClassList(name, sex, dogs, ("Excellent", "Very good", "Good"), is_published=True))
    return found
