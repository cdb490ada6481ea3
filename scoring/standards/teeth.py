"""The adult dog's 42 teeth by modified Triadan number, and the groups a standard's clauses name."""

from collections.abc import Iterable

UPPER_QUADRANTS = (100, 200)
LOWER_QUADRANTS = (300, 400)
UPPER_LAST, LOWER_LAST = 10, 11

# Quadrant first, then counted from the midline; the upper row stops at 10, so 111 and 211 do not exist.
# Source: Merck veterinary manual; Royal Veterinary College (modified Triadan system).
DOG_TEETH: tuple[int, ...] = tuple(
    quadrant + position
    for quadrants, last in ((UPPER_QUADRANTS, UPPER_LAST), (LOWER_QUADRANTS, LOWER_LAST))
    for quadrant in quadrants
    for position in range(1, last + 1)
)

POSITIONS: dict[str, tuple[int, ...]] = {
    "incisors": (1, 2, 3),
    "canines": (4,),
    "p1": (5,),
    "p2": (6,),
    "p3": (7,),
    "p4": (8,),
    "m1": (9,),
    "m2": (10,),
    "m3": (11,),
    "all": tuple(range(1, LOWER_LAST + 1)),
}


def teeth_named(groups: Iterable[str]) -> frozenset[int]:
    """The Triadan numbers of the named groups: teeth_named(["p1", "m3"]) is 105, 205, 305, 405, 311, 411."""
    positions = {position for group in groups for position in POSITIONS[group]}
    return frozenset(tooth for tooth in DOG_TEETH if tooth % 100 in positions)
