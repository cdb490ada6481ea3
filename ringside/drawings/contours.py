"""The lines of a standing dog seen from the side, facing right, in heights at the withers, y upward.

Each line runs clockwise, the body on its right hand; a knot given twice is a corner. The figures are drawn by eye.
"""

import math

from ringside.drawings.curves import Point, between, sampled, smooth
from ringside.drawings.frame import Frame, Line
from ringside.drawings.hatching import Segment, crescent, hatched
from ringside.drawings.head import ear, eye, mouth, nose, skull, throat
from ringside.drawings.limbs import far_legs, front_leg, hind_leg, toes

SHADE_SLOPE = 58.0


def near_lines(frame: Frame) -> list[Line]:
    return [
        *topline(frame),
        nose(frame),
        mouth(frame),
        throat(frame),
        front_leg(frame),
        belly(frame),
        hind_leg(frame),
        *tail(frame),
        *ear(frame),
        *eye(frame),
        *details(frame),
        *fringe(frame),
    ]


def topline(frame: Frame) -> list[Line]:
    """One sweep from the root of the tail over back, neck and skull to the nose, broken by an ear that stands up."""
    behind, before = back(frame), skull(frame)
    if frame.build.ear == "drop":
        return [Line("topline", (*behind, *before), 1.05, (0.5, 0.5))]
    return [
        Line("topline", (*behind, before[0], frame.head(0.07, 0.034)), 1.05, (0.5, 0.5)),
        Line("skull", (frame.head(0.285, 0.056), *before[3:]), 1.05, (0.4, 0.5)),
    ]


def back(frame: Frame) -> tuple[Point, ...]:
    return (
        frame.on("croup-start", "pin-bone", 0.78, -0.045),
        frame.on("croup-start", "pin-bone", 0.4, -0.026),
        frame.at("croup-start", 0.0, 0.002),
        frame.on("croup-start", "withers", 0.35, -0.002),
        frame.on("croup-start", "withers", 0.7, -0.008),
        frame.on("croup-start", "withers", 0.9, -0.002),
        frame.at("withers"),
        frame.on("withers", "occiput", 0.13, -0.024),
        frame.on("withers", "occiput", 0.32, -0.018),
        frame.on("withers", "occiput", 0.6, 0.008),
        frame.on("withers", "occiput", 0.85, 0.022),
    )


def belly(frame: Frame) -> Line:
    tuck = 0.05 * frame.build.tuck
    knots = (
        frame.at("elbow", -0.045, 0.03),
        frame.at("brisket", -0.05, -0.004),
        frame.at("brisket", -0.16, -0.004),
        frame.on("brisket", "stifle", 0.52, -0.052 - tuck * 0.2),
        frame.on("brisket", "stifle", 0.78, -0.06 - tuck * 0.8),
        frame.at("stifle", 0.085, 0.02 + tuck * 2.1),
        frame.at("stifle", 0.06, 0.05 + tuck * 2.1),
    )
    return Line("belly", knots, 1.1, (0.15, 0.2))


def tail(frame: Frame) -> list[Line]:
    root = frame.on("croup-start", "pin-bone", 0.78, -0.045)
    under = frame.at("pin-bone", -0.005, 0.02)
    over, beneath = _hanging(frame, root, under) if frame.build.tail == "hanging" else _carried(frame, root, under)
    return [Line("tail-over", over, 1.0, (0.2, 0.5)), Line("tail-under", beneath, 1.0, (0.4, 0.2))]


def details(frame: Frame) -> list[Line]:
    """What shows under the skin: the fine lines inside the outline."""
    bone = frame.build.bone
    return [
        *_before_the_ribs(frame),
        *_behind_the_ribs(frame),
        *toes("front", frame.at("front-foot"), bone),
        *toes("rear", frame.at("rear-foot"), bone),
    ]


def _fine(name: str, *knots: Point, weight: float = 0.55) -> Line:
    return Line(name, knots, weight, (0.05, 0.05), "detail")


def _before_the_ribs(frame: Frame) -> list[Line]:
    def on(a: str, b: str, *steps: Point) -> list[Point]:
        return [frame.on(a, b, t, aside) for t, aside in steps]

    neck = on("occiput", "point-of-shoulder", (0.4, 0.0), (0.7, -0.03))
    blade = on("withers", "point-of-shoulder", (0.16, -0.02), (0.5, 0.012), (0.86, 0.0))
    arm = on("point-of-shoulder", "elbow", (0.0, -0.03), (0.35, -0.045), (0.68, -0.05))
    return [
        _fine("cheek", frame.face(0.04, -0.24), frame.face(-0.08, -0.31), frame.face(-0.16, -0.4)),
        _fine("crest", frame.head(0.14, -0.35), *neck),
        _fine("blade", *blade),
        _fine("arm", *arm),
        _fine("elbow", frame.at("elbow", -0.05, 0.07), frame.at("elbow", -0.02, 0.01), frame.at("elbow", 0.0, -0.05)),
    ]


def _behind_the_ribs(frame: Frame) -> list[Line]:
    rib = [frame.at("brisket", *step) for step in ((-0.26, 0.29), (-0.3, 0.21), (-0.3, 0.14))]
    flank = [frame.at("stifle", *step) for step in ((0.06, 0.12), (0.085, 0.2), (0.07, 0.28))]
    thigh = [frame.on("hip", "stifle", *step) for step in ((0.35, -0.06), (0.7, -0.055), (0.98, -0.02))]
    tendon = [frame.on("stifle", "hock", *step) for step in ((0.55, -0.02), (0.8, 0.002))]
    return [
        _fine("rib", *rib, weight=0.4),
        _fine("flank", *flank),
        _fine("thigh", *thigh),
        _fine("tendon", *tendon, frame.at("hock", 0.03, -0.02)),
    ]


def fringe(frame: Frame) -> list[Line]:
    """Locks of a long coat, hanging from chest, belly, forearm, thigh and tail."""
    if frame.build.fringe < 0.01:
        return []
    throat_line, rear, front = throat(frame).knots, hind_leg(frame).knots, front_leg(frame).knots
    hanging = (
        (throat_line[8:], 22, 0.6),
        (belly(frame).knots[1:6], 40, 0.75),
        (front[-6:-1], 16, 0.75),
        (rear[-9:-2], 26, 0.95),
        (tail(frame)[1].knots[:-1], 26, 1.0),
    )
    return [lock for knots, count, long in hanging for lock in _locks(knots, count, long * frame.build.fringe)]


def _locks(knots: tuple[Point, ...], count: int, long: float) -> list[Line]:
    points = _dense(knots)
    locks = []
    for i in range(count):
        x, y = points[i * (len(points) - 1) // (count - 1)]
        reach = long * (0.8 + 0.2 * math.cos(2.4 * i))
        middle, tip = (x - 0.22 * reach, y - 0.45 * reach), (x - 0.62 * reach, y - 0.78 * reach)
        locks.append(Line("lock", ((x, y), middle, tip), 0.34, (0.8, 0.1), "detail"))
    return locks


def solids(frame: Frame) -> dict[str, tuple[Point, ...]]:
    """The closed shapes behind the lines, for filling and for pointing at a section."""
    nape, face, jaw = back(frame), skull(frame), throat(frame).knots
    front, rear = front_leg(frame).knots, hind_leg(frame).knots
    over, under = (line.knots for line in tail(frame))
    head = (*face[:9], *nose(frame).knots[2:5], *mouth(frame).knots[1:3], *jaw[1:8])
    return {
        "head": head,
        "neck": (*nape[6:], face[0], frame.head(0.2, -0.2), *jaw[7:11], frame.at("point-of-shoulder")),
        "body": (
            nape[0],  # a corner here and at the croup below: the back is straight, not rounded into the tail
            *nape[:7],
            frame.at("point-of-shoulder"),
            *jaw[10:],
            frame.at("elbow", 0.05),
            *belly(frame).knots[1:6],
            frame.on("hip", "stifle", 0.5),
            frame.at("pin-bone"),
        ),
        "tail": (*over, *under[:-1]),
        "forequarters": (frame.at("withers"), frame.at("point-of-shoulder", 0.02), *front),
        "hindquarters": (frame.at("croup-start"), frame.at("croup-start"), *rear),
    }


def shade(frame: Frame) -> list[Segment]:
    """Pen strokes where the body turns from the light, which falls from above and in front."""
    rear, front, under = hind_leg(frame).knots, front_leg(frame).knots, throat(frame).knots
    shapes = (
        (_dense(belly(frame).knots[:6]), 0.07),
        (_dense(rear[-9:]), 0.075),
        (_dense(front[17:]), 0.022),
        (_dense(under[4:11]), 0.05),
        (_dense(under[10:]), 0.03),
    )
    return hatched([crescent(knots, depth) for knots, depth in shapes], 0.0125, SHADE_SLOPE)


def far_shade(frame: Frame) -> list[Segment]:
    """The far legs stand in the shade of the body."""
    front, rear = far_legs(frame)
    return hatched([_dense(front.knots), _dense(rear.knots)], 0.0145, SHADE_SLOPE)


def _dense(knots: tuple[Point, ...]) -> list[Point]:
    return sampled(smooth(knots), 6)


def _hanging(frame: Frame, root: Point, under: Point) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    hock = frame.at("hock", -0.1, 0.07)
    tip = (hock[0], root[1] + (hock[1] - root[1]) * frame.build.tail_length)
    over = (
        tip,
        (tip[0] - 0.032, tip[1] + 0.07),
        (tip[0] - 0.02, tip[1] + 0.2),
        (root[0] - 0.12, root[1] - 0.2),
        (root[0] - 0.075, root[1] - 0.06),
        root,
    )
    beneath = (
        under,
        (under[0] - 0.045, under[1] - 0.1),
        (tip[0] + 0.035, tip[1] + 0.2),
        (tip[0] + 0.008, tip[1] + 0.08),
        tip,
    )
    return over, beneath


# Along the middle of a tail carried above the back, from its root, in heights at the withers; its half width there.
CARRIED = {
    "sickle": ((-0.09, 0.03, 0.034), (-0.15, 0.13, 0.03), (-0.165, 0.25, 0.024), (-0.135, 0.35, 0.016)),
    "ring": ((-0.06, 0.07, 0.036), (-0.05, 0.17, 0.034), (0.03, 0.22, 0.03), (0.1, 0.17, 0.024), (0.1, 0.1, 0.014)),
}


def _carried(frame: Frame, root: Point, under: Point) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    long = frame.build.tail_length
    middle = [(root[0] + x * long, root[1] + y * long) for x, y, _ in CARRIED[frame.build.tail]]
    wide = [half for _, _, half in CARRIED[frame.build.tail]]
    ways = list(zip([root, *middle[:-1]], middle, wide, strict=True))
    left = [between(a, b, 1.0, half) for a, b, half in ways[:-1]]
    right = [between(a, b, 1.0, -half) for a, b, half in ways[:-1]]
    tip = middle[-1]
    return (tip, *reversed(right), root), (under, *left, tip)
