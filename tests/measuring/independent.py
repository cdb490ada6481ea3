"""The same measurements by another way, with the uncertainties library: rotation by the roll's angle instead of
projection on the ground line, directions instead of cross products, the whole shoelace sum, the dog's facing given.
"""

import math

from uncertainties import ufloat, umath

from tests.measuring.dogs import Pictured

LOGARITHM = ("upper-arm-ratio", "stride-balance")


def measured(dog: Pictured) -> dict[str, tuple[float, float]]:
    """Value and SD of every measurement that the dog's landmarks and ground line allow."""
    sd = dog.click_sd
    clicks = {name: (ufloat(x, sd), ufloat(y, sd)) for name, (x, y) in dog.landmarks.items()}
    level, height = _levelled(dog, clicks)
    found = {}
    for code, (names, formula, needs_ground) in FORMULAS[dog.view].items():
        if all(name in clicks for name in names) and not (needs_ground and dog.ground is None):
            value = formula(level, height)
            spread = umath.log(value).std_dev if code in LOGARITHM else value.std_dev
            found[code] = (value.nominal_value, spread)
    return found


def _levelled(dog: Pictured, clicks):
    """Points turned by minus the roll, x ahead of the dog; and the withers' height over the ground line."""
    if dog.ground is None:
        return {name: (x * dog.facing, y) for name, (x, y) in clicks.items()}, None
    (ax, ay), (bx, by) = (tuple(ufloat(v, dog.click_sd) for v in place) for place in sorted(dog.ground))
    roll = umath.atan2(by - ay, bx - ax)

    def turn(point):
        x, y = point
        return x * umath.cos(roll) + y * umath.sin(roll), y * umath.cos(roll) - x * umath.sin(roll)

    level = {name: turn(point) for name, point in clicks.items()}
    ground_y = turn((ax, ay))[1]
    height = ground_y - level["withers"][1] if "withers" in level else None
    return {name: (x * dog.facing, y) for name, (x, y) in level.items()}, height


def _positive(value):
    return value if value.nominal_value >= 0 else -value


def _direction(p, q):
    return umath.atan2(q[1] - p[1], q[0] - p[0])


def _vertex(one, vertex, other):
    between = _positive(_direction(vertex, one) - _direction(vertex, other))
    return umath.degrees(between if between.nominal_value <= math.pi else 2 * math.pi - between)


def _length(p, q):
    return umath.sqrt((q[0] - p[0]) ** 2 + (q[1] - p[1]) ** 2)


def _area(a, b, c):
    return _positive(a[0] * (b[1] - c[1]) + b[0] * (c[1] - a[1]) + c[0] * (a[1] - b[1])) / 2


def _up(p, withers, foot):
    return p / (foot[1] - withers[1])


def _lean(top, bottom):
    """Degrees from the vertical, positive where the lower end lies to the picture's right."""
    return umath.degrees(umath.atan2(bottom[0] - top[0], bottom[1] - top[1]))


def _bend(top, middle, foot):
    """How far the middle lies to the picture's right of the line, over its length: turn the line upright, look."""
    length = _length(top, foot)
    tilt = umath.atan2(foot[0] - top[0], foot[1] - top[1])
    along_x, along_y = middle[0] - top[0], middle[1] - top[1]
    return (along_x * umath.cos(tilt) - along_y * umath.sin(tilt)) / length


def _column(side, top, middle):
    names = (f"{side}-{top}", f"{side}-{middle}", f"{side}-foot")
    sign = -1 if side == "left" else 1
    return names, lambda p, _: sign * _bend(*(p[name] for name in names)), False


def _legs(top):
    names = (f"left-{top}", "left-foot", f"right-{top}", "right-foot")
    return names, lambda p, _: _lean(p[names[0]], p[names[1]]) - _lean(p[names[2]], p[names[3]]), False


W, S, E, F, P = "withers", "point-of-shoulder", "elbow", "front-foot", "pin-bone"
LEAD, TRAIL = "front-foot-lead", "front-foot-trail"
STRIDE = (E, LEAD, TRAIL, "stifle", "rear-foot-lead", "rear-foot-trail")
FORMULAS = {
    "standing-side": {
        "front-angle": ((W, S, E), lambda p, _: _vertex(p[W], p[S], p[E]), False),
        "rear-angle": ((P, "stifle", "hock"), lambda p, _: _vertex(p[P], p["stifle"], p["hock"]), False),
        "hock-angle": (
            ("stifle", "hock", "rear-foot"),
            lambda p, _: _vertex(p["stifle"], p["hock"], p["rear-foot"]),
            False,
        ),
        "blade-slope": ((W, S), lambda p, _: umath.degrees(_direction(p[W], p[S])), True),
        "arm-slope": ((S, E), lambda p, _: 180 - umath.degrees(_direction(p[S], p[E])), True),
        "pastern-slope": (("front-pastern", F), lambda p, _: _lean(p["front-pastern"], p[F]), True),
        "croup-slope": (
            ("croup-start", P),
            lambda p, _: -umath.degrees(umath.asin((p["croup-start"][1] - p[P][1]) / _length(p["croup-start"], p[P]))),
            True,
        ),
        "topline-slope": (
            (W, "croup-start"),
            lambda p, _: umath.degrees(umath.asin((p["croup-start"][1] - p[W][1]) / _length(p[W], p["croup-start"]))),
            True,
        ),
        "front-set": ((W, F), lambda p, _: _up(p[F][0] - p[W][0], p[W], p[F]), False),
        "upper-arm-ratio": ((W, S, E), lambda p, _: _length(p[S], p[E]) / _length(p[W], p[S]), False),
        "length-ratio": ((S, P, W, F), lambda p, _: _up(p[S][0] - p[P][0], p[W], p[F]), False),
        "chest-depth": ((W, "brisket", F), lambda p, _: _up(p["brisket"][1] - p[W][1], p[W], p[F]), False),
        "hock-height": (
            ("hock", "rear-foot", W, F),
            lambda p, _: _up(p["rear-foot"][1] - p["hock"][1], p[W], p[F]),
            False,
        ),
    },
    "moving-side": {
        "front-reach": ((LEAD, "nose", W), lambda p, height: (p[LEAD][0] - p["nose"][0]) / height, True),
        "stride-balance": (
            STRIDE,
            lambda p, _: _area(*(p[n] for n in STRIDE[:3])) / _area(*(p[n] for n in STRIDE[3:])),
            False,
        ),
    },
    "front": {
        "column-bend-left": _column("left", "shoulder", "pastern"),
        "column-bend-right": _column("right", "shoulder", "pastern"),
        "convergence": _legs("shoulder"),
    },
    "rear": {
        "column-bend-left": _column("left", "hip", "pastern"),
        "column-bend-right": _column("right", "hip", "pastern"),
        "convergence": _legs("hip"),
    },
}
