"""The landmarks' names, and how they lie to each other on any dog."""

from itertools import combinations
from typing import Literal

View = Literal["standing-side", "moving-side", "front", "rear"]
VIEWS: tuple[View, ...] = ("standing-side", "moving-side", "front", "rear")
SIDE_VIEWS: tuple[View, ...] = ("standing-side", "moving-side")

STANDING = (
    "withers",
    "point-of-shoulder",
    "elbow",
    "front-pastern",
    "front-foot",
    "forechest",
    "brisket",
    "croup-start",
    "pin-bone",
    "hip",
    "stifle",
    "hock",
    "rear-foot",
    "tail-set",
    "nose",
    "occiput",
)
MOVING = ("front-foot-lead", "front-foot-trail", "rear-foot-lead", "rear-foot-trail")
OF_A_LEG = ("shoulder", "elbow", "pastern", "foot", "hip", "hock")
COLUMNS = tuple(f"{side}-{part}" for side in ("left", "right") for part in OF_A_LEG)
LANDMARKS = frozenset(STANDING + MOVING + COLUMNS)

# Each chain names landmarks in an order that holds on any dog, standing or at the trot (anatomy; common practice, no
# source). Pairs that posture or breed may turn round, such as hock and pin bone along the dog, share no chain.
_DOWNWARD = (
    ("withers", "point-of-shoulder", "elbow", "front-pastern", "front-foot"),
    ("withers", "brisket", "front-foot"),
    ("croup-start", "pin-bone", "hock", "rear-foot"),
    ("croup-start", "hip", "stifle", "hock", "rear-foot"),
    ("withers", "elbow", "front-foot-lead"),
    ("withers", "elbow", "front-foot-trail"),
    ("stifle", "rear-foot-lead"),
    ("stifle", "rear-foot-trail"),
    *((f"{side}-shoulder", f"{side}-elbow", f"{side}-pastern", f"{side}-foot") for side in ("left", "right")),
    *((f"{side}-hip", f"{side}-hock", f"{side}-pastern", f"{side}-foot") for side in ("left", "right")),
)
_BACKWARD = (
    ("nose", "withers", "croup-start", "pin-bone"),
    ("nose", "point-of-shoulder", "elbow", "stifle", "hock"),
    ("point-of-shoulder", "withers", "croup-start", "tail-set"),
    ("forechest", "elbow", "stifle", "rear-foot"),
    ("occiput", "withers", "hip", "pin-bone"),
    ("point-of-shoulder", "pin-bone"),
    ("brisket", "croup-start"),
    ("front-foot", "croup-start", "rear-foot"),
    ("front-pastern", "stifle"),
    ("nose", "elbow", "stifle", "rear-foot-trail"),
    ("front-foot-lead", "elbow", "stifle"),
    ("front-foot-lead", "front-foot-trail"),
    ("rear-foot-lead", "rear-foot-trail"),
)

Pair = tuple[str, str]


def _pairs(chains: tuple[tuple[str, ...], ...]) -> tuple[Pair, ...]:
    return tuple(dict.fromkeys(pair for chain in chains for pair in combinations(chain, 2)))


# The first of each pair lies above, ahead of, or to the picture's left of the second.
ABOVE = _pairs(_DOWNWARD)
AHEAD = _pairs(_BACKWARD)
LEFT_OF: tuple[Pair, ...] = tuple((f"left-{part}", f"right-{part}") for part in OF_A_LEG)
