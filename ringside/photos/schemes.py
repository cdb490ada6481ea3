"""Small drawings that show where each landmark lies: the breed's outline standing, plain figures of our own else."""

from dataclasses import dataclass

from ringside.drawings.outline import outline
from ringside.drawings.portrait import build_of

Place = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Scheme:
    """`paths` are (data, kind); kinds: "ink" is filled, "body" filled with paper, "limb" a stroke."""

    size: tuple[float, float]
    paths: tuple[tuple[str, str], ...]
    places: dict[str, Place]


def scheme(view: str, breed: str) -> Scheme:
    if view == "standing-side":
        return _standing(breed)
    return _moving(breed) if view == "moving-side" else END_ON[view]


def _standing(breed: str) -> Scheme:
    drawn = outline(build_of(breed))
    ink = tuple((stroke.path, "ink") for stroke in drawn.strokes if stroke.tone == "near")
    body = tuple((path, "body") for path in drawn.body)
    far = tuple((stroke.path, "ink") for stroke in drawn.under)
    return Scheme((drawn.width, drawn.height), (*far, *body, *ink), drawn.landmarks)


def _moving(breed: str) -> Scheme:
    """The breed's trunk over legs at full reach; the far pair steps the other way."""
    drawn = outline(build_of(breed))
    at = drawn.landmarks
    ground, high = at["front-foot"][1], at["front-foot"][1] - at["withers"][1]
    elbow, hip, stifle = at["elbow"], at["hip"], at["stifle"]
    feet = {
        "front-foot-lead": (elbow[0] + 0.5 * high, ground - 0.12 * high),
        "front-foot-trail": (elbow[0] - 0.22 * high, ground),
        "rear-foot-lead": (stifle[0] + 0.2 * high, ground),
        "rear-foot-trail": (stifle[0] - 0.5 * high, ground - 0.14 * high),
    }
    hock = (feet["rear-foot-trail"][0] - 0.02 * high, ground - 0.38 * high)
    legs = (
        _limb(elbow, (elbow[0] - 0.08 * high, ground - 0.25 * high), feet["front-foot-trail"]),
        _limb(elbow, (elbow[0] + 0.28 * high, ground - 0.3 * high), feet["front-foot-lead"]),
        _limb(hip, (stifle[0] + 0.1 * high, stifle[1]), (stifle[0], ground - 0.2 * high), feet["rear-foot-lead"]),
        _limb(hip, stifle, hock, feet["rear-foot-trail"]),
    )
    trunk = tuple((drawn.regions[name], "trunk") for name in ("tail", "body", "neck", "head"))
    return Scheme((drawn.width, drawn.height), (*legs, *trunk), {**at, **feet})


def _limb(*places: Place) -> tuple[str, str]:
    return "M" + "L".join(f"{x:.0f},{y:.0f}" for x, y in places), "limb"


def _pair(name: str, x: float, y: float) -> dict[str, Place]:
    return {f"left-{name}": (MIDDLE - x, y), f"right-{name}": (MIDDLE + x, y)}


def _legs(*joints: Place) -> tuple[tuple[str, str], ...]:
    """A leg on both sides through joints given as their distance from the middle and their height, and its foot."""
    x, y = joints[-1]
    foot = ((x - FOOT, y), (x + FOOT, y))
    return tuple(_limb(*((MIDDLE + side * px, py) for px, py in part)) for part in (joints, foot) for side in (-1, 1))


MIDDLE, FOOT = 300.0, 22.0
END_ON_SIZE = (600.0, 520.0)
_CHEST = "M170,110C170,30 240,20 300,20C360,20 430,30 430,110C440,210 390,280 300,280C210,280 160,210 170,110Z"
_FACE = "M250,50C250,0 350,0 350,50C350,110 330,150 300,150C270,150 250,110 250,50Z"
_EARS = "M256,24C228,30 216,70 230,96C246,90 254,70 256,50ZM344,24C372,30 384,70 370,96C354,90 346,70 344,50Z"
_RUMP = (
    "M180,90C190,20 260,10 300,10C340,10 410,20 420,90C450,180 440,260 400,310C365,290 335,270 300,240"
    "C265,270 235,290 200,310C160,260 150,180 180,90Z"
)
_TAIL = "M292,30C276,110 290,190 300,236C314,190 324,110 308,30Z"
END_ON = {
    "front": Scheme(
        END_ON_SIZE,
        (*_legs((112, 110), (112, 230), (98, 380), (94, 480)), (_CHEST, "trunk"), (_EARS, "trunk"), (_FACE, "trunk")),
        _pair("shoulder", 112, 110) | _pair("elbow", 112, 230) | _pair("pastern", 98, 380) | _pair("foot", 94, 480),
    ),
    "rear": Scheme(
        END_ON_SIZE,
        (*_legs((105, 110), (98, 330), (96, 480)), (_RUMP, "trunk"), (_TAIL, "trunk")),
        _pair("hip", 105, 110) | _pair("hock", 98, 330) | _pair("foot", 96, 480),
    ),
}
