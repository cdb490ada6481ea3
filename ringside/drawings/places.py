"""Where on the picture each point of the vocabulary is marked: its spot on the dog, and its marker beside it."""

import math

from ringside.drawings.contours import tail
from ringside.drawings.curves import Point
from ringside.drawings.frame import Frame

APART = 34.0  # the least distance of two markers, picture units
MARKER = 26.0  # the widest marker
EDGE = 20.0

# How far a marker stands from its spot, picture units, x to the right, y downward. None: on the spot.
ASIDE: dict[str, Point] = {
    "substance": (-44, 14),
    "sex-type": (-62, 6),
    "skull": (-12, -36),
    "stop": (34, -62),
    "muzzle-length": (34, -44),
    "muzzle-depth": (-6, 44),
    "lips": (18, 40),
    "bite": (50, 24),
    "teeth": (44, 62),
    "eye-colour": (8, -66),
    "eyelids": (-14, -62),
    "ear-set": (-38, -48),
    "ear-carriage": (-86, -6),
    "throat": (38, 16),
    "withers": (-6, -38),
    "topline": (0, -34),
    "loin": (0, -34),
    "croup": (-4, -38),
    "moving-topline": (0, -72),
    "chest-depth": (-4, 38),
    "forechest": (40, 4),
    "underline": (0, 40),
    "tail-set": (-34, -30),
    "tail-carriage": (-42, -6),
    "tail-form": (-40, 0),
    "tail-length": (-10, 34),
    "elbows": (-42, 44),
    "pasterns": (84, 0),
    "forelegs": (62, -12),
    "feet": (60, 14),
    "hocks": (-44, 0),
    "rear-pasterns": (-42, 4),
    "dewclaws": (66, -14),
    "pigment": (40, -26),
    "testicles": (44, 30),
    "white": (44, 10),
}


def spots(frame: Frame) -> dict[str, Point]:
    """Each point's own spot, in heights at the withers."""
    return {**_head(frame), **_trunk(frame), **_limbs(frame), **_whole(frame)}


def _head(frame: Frame) -> dict[str, Point]:
    return {
        "sex-type": frame.head(0.0, 0.0),
        "skull": frame.head(0.2, 0.05),
        "stop": frame.face(0.02, -0.03),
        "muzzle-length": frame.face(0.5, -0.05),
        "muzzle-depth": frame.face(0.5, -0.4),
        "lips": frame.face(0.8, -0.335),
        "bite": frame.face(1.0, -0.26),
        "teeth": frame.face(0.9, -0.31),
        "eye-colour": frame.head(1.0 - frame.build.muzzle - 0.03, -0.085),
        "eyelids": frame.head(1.0 - frame.build.muzzle - 0.08, -0.1),
        "pigment": frame.face(1.03, -0.1),
        "ear-set": frame.head(0.17, 0.01),
        "ear-size": frame.head(0.22, -0.22),
        "ear-carriage": frame.head(0.1, -0.2),
        "neck": frame.on("withers", "occiput", 0.55, -0.09),
        "throat": frame.head(0.3, -0.52),
        "temperament": frame.head(1.25, 0.3),
    }


def _trunk(frame: Frame) -> dict[str, Point]:
    over = tail(frame)[0].knots
    return {
        "withers": frame.at("withers"),
        "topline": frame.on("withers", "croup-start", 0.42, 0.0),
        "moving-topline": frame.on("withers", "croup-start", 0.55, 0.0),
        "loin": frame.on("withers", "croup-start", 0.76, 0.0),
        "croup": frame.on("croup-start", "pin-bone", 0.3, -0.02),
        "chest-depth": frame.at("brisket", -0.15, 0.0),
        "forechest": frame.at("forechest", 0.0, 0.02),
        "ribs": frame.at("brisket", -0.14, 0.26),
        "underline": frame.on("brisket", "stifle", 0.62, -0.06),
        "tail-set": frame.at("tail-set"),
        "tail-carriage": over[-3],
        "tail-form": over[-4],
        "tail-length": over[0],
    }


def _limbs(frame: Frame) -> dict[str, Point]:
    return {
        "shoulder": frame.on("withers", "point-of-shoulder", 0.52, 0.0),
        "front-angulation": frame.at("point-of-shoulder", -0.01, -0.01),
        "upper-arm": frame.on("point-of-shoulder", "elbow", 0.55, 0.0),
        "elbows": frame.at("elbow", -0.04, 0.0),
        "substance": frame.on("elbow", "front-pastern", 0.55, -0.035),
        "pasterns": frame.on("front-pastern", "front-foot", 0.3, 0.02),
        "forelegs": frame.at("front-foot", 0.06, 0.06),
        "feet": frame.at("front-foot", 0.07, 0.02),
        "rear-angulation": frame.at("stifle", -0.015, 0.015),
        "thigh": frame.on("pin-bone", "stifle", 0.36, 0.0),
        "muscle": frame.on("hip", "stifle", 0.4, 0.035),
        "hocks": frame.at("hock"),
        "rear-pasterns": frame.on("hock", "rear-foot", 0.5, -0.02),
        "dewclaws": frame.on("hock", "rear-foot", 0.62, 0.03),
        "testicles": frame.at("stifle", 0.02, 0.02),
    }


def _whole(frame: Frame) -> dict[str, Point]:
    front, rear = frame.at("front-foot"), frame.at("rear-foot")
    middle = (front[0] + rear[0]) / 2
    side = frame.on("withers", "croup-start", 0.5)
    return {
        "proportions": (middle, 0.13),
        "condition": (side[0] - 0.03, 0.72),
        "height": (frame.marks["nose"][0] + 0.07, 0.78),
        "weight": (middle, 0.3),
        "chest-girth": frame.at("elbow", -0.1, 0.12),
        "reach": (front[0] + 0.2, -0.075),
        "coming": (front[0] + 0.3, -0.075),
        "drive": (rear[0] - 0.02, -0.075),
        "going": (rear[0] - 0.12, -0.075),
        "ways-of-moving": (middle, -0.075),
        "coat-length": (side[0] + 0.2, 0.9),
        "coat-density": (side[0] + 0.05, 0.9),
        "coat-wave": (side[0] - 0.1, 0.9),
        "colour": (side[0] + 0.12, 0.81),
        "markings": (side[0] - 0.03, 0.82),
        "white": frame.at("forechest", -0.02, -0.09),
    }


def laid_out(
    marked: dict[str, Point], width: float, height: float
) -> tuple[dict[str, Point], dict[str, tuple[Point, Point]]]:
    """The markers' middles, no two nearer than APART, and a line from its spot to each that stands aside."""
    wanted = {code: _aside(code, spot) for code, spot in marked.items()}
    places = _spread(wanted, width, height)
    leaders = {code: _leader(marked[code], place) for code, place in places.items() if _far(marked[code], place)}
    return places, leaders


def _aside(code: str, spot: Point) -> Point:
    dx, dy = ASIDE.get(code, (0.0, 0.0))
    return (spot[0] + dx, spot[1] + dy)


def _far(spot: Point, place: Point) -> bool:
    return math.dist(spot, place) > MARKER


def _leader(spot: Point, place: Point) -> tuple[Point, Point]:
    """From the spot to the edge of the marker."""
    t = 1 - (MARKER / 2 + 2) / math.dist(spot, place)
    end = (round(spot[0] + (place[0] - spot[0]) * t, 1), round(spot[1] + (place[1] - spot[1]) * t, 1))
    return ((round(spot[0], 1), round(spot[1], 1)), end)


def _spread(wanted: dict[str, Point], width: float, height: float) -> dict[str, Point]:
    """Pushes markers that crowd each other apart, always in the same order, so always to the same places."""
    codes = sorted(wanted)
    spread = [_inside(wanted[code], width, height) for code in codes]
    for _ in range(300):
        if not _push(spread, width, height):
            break
    return {code: (round(x, 1), round(y, 1)) for code, (x, y) in zip(codes, spread, strict=True)}


def _push(spread: list[Point], width: float, height: float) -> bool:
    moved = False
    for i in range(len(spread)):
        for j in range(i):
            (ax, ay), (bx, by) = spread[i], spread[j]
            near = math.hypot(ax - bx, ay - by)
            if near >= APART:
                continue
            ux, uy = ((ax - bx) / near, (ay - by) / near) if near > 0.01 else (1.0, 0.0)
            by_half = (APART - near) / 2 + 0.1
            spread[i] = _inside((ax + ux * by_half, ay + uy * by_half), width, height)
            spread[j] = _inside((bx - ux * by_half, by - uy * by_half), width, height)
            moved = True
    return moved


def _inside(point: Point, width: float, height: float) -> Point:
    return (min(max(point[0], EDGE), width - EDGE), min(max(point[1], EDGE), height - EDGE))
