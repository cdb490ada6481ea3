"""What the invented shows of the long run need to know of a governing body: its classes by age, and who may win what.

Written by hand from the bodies' own texts as the project's rule books name them, and without the project's code, so
that the recount stands beside it: FCI regulations on the CACIB and a member's show rules (VDH, 2019); Canadian Kennel
Club, championship section, and a breeder's worked explanation of its points. Puppies' and veterans' awards, the
candidates of best of sex and the finals are common practice, from memory.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

# Breeds of the project's standards and the group each belongs to: FCI nomenclature; Canadian groups from memory.
FCI_GROUPS = {"german-shepherd-dog": "1", "dachshund": "4"}
CANADIAN_GROUPS = {"german-shepherd-dog": "7", "dachshund": "2"}


@dataclass(frozen=True)
class Class:
    """`months` is an age well inside the class; `weight` how many dogs of a hundred stand in it, about."""

    code: str
    months: int
    weight: int
    titles: str = ""
    certificates: str = ""


@dataclass(frozen=True)
class Body:
    """`graded` says whether dogs have grades; `awards` decides a breed's, `finals` says whose winners compete."""

    code: str
    classes: Sequence[Class]
    graded: bool
    groups: Mapping[str, str]
    other_group: str
    # Too old for the first of the two classes and right in the second; too young in the third, right in the fourth.
    moves: tuple[str, str, str, str]
    champions: str
    places_in_finals: Callable[[str], int]
    finals: Mapping[str, tuple[str, str]]
    counts_points: bool = False

    def class_of(self, code: str) -> Class:
        return next(one for one in self.classes if one.code == code)

    def group_of(self, breed: str) -> str:
        return self.groups.get(breed, self.other_group)


FCI = Body(
    code="fci",
    classes=(
        Class("minor-puppy", 5, 6),
        Class("puppy", 7, 10),
        Class("junior", 12, 18),
        Class("intermediate", 20, 18),
        Class("open", 36, 26),
        Class("working", 40, 6, certificates="WCC"),
        Class("champion", 50, 9, titles="national champion"),
        Class("veteran", 110, 7),
    ),
    graded=True,
    groups=FCI_GROUPS,
    other_group="2",
    moves=("junior", "open", "open", "minor-puppy"),
    champions="champion",
    places_in_finals=lambda award: 3,
    # Final: level, and the award whose winners compete.
    finals={
        "best-in-group": ("group", "best-of-breed"),
        "best-in-show": ("show", "best-in-group"),
        "best-minor-puppy-in-show": ("show", "best-minor-puppy"),
        "best-puppy-in-show": ("show", "best-puppy"),
        "best-junior-in-show": ("show", "best-junior"),
        "best-veteran-in-show": ("show", "best-veteran"),
    },
)

CANADA = Body(
    code="canada",
    classes=(
        Class("baby-puppy", 5, 5),
        Class("junior-puppy", 7, 10),
        Class("senior-puppy", 10, 12),
        Class("twelve-to-eighteen-months", 14, 13),
        Class("canadian-bred", 30, 12),
        Class("bred-by-exhibitor", 30, 12),
        Class("open", 36, 18),
        Class("specials-only", 50, 12, titles="national champion"),
        Class("veteran", 100, 6),
    ),
    graded=False,
    groups=CANADIAN_GROUPS,
    other_group="3",
    moves=("senior-puppy", "open", "open", "baby-puppy"),
    champions="specials-only",
    places_in_finals=lambda award: 4 if award == "best-in-group" else 1,
    finals={
        "best-in-group": ("group", "best-of-breed"),
        "best-baby-puppy-in-group": ("group", "best-baby-puppy"),
        "best-puppy-in-group": ("group", "best-puppy"),
        "best-in-show": ("show", "best-in-group"),
        "reserve-best-in-show": ("show", "best-in-group"),
        "best-baby-puppy-in-show": ("show", "best-baby-puppy-in-group"),
        "best-puppy-in-show": ("show", "best-puppy-in-group"),
        "best-veteran-in-show": ("show", "best-veteran"),
    },
    counts_points=True,
)
