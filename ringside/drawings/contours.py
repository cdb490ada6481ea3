"""The lines of a standing dog seen from the side, facing right, in heights at the withers, y upward.

Each line runs clockwise, the body on its right hand; a knot given twice is a corner. The figures are drawn by eye.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Literal

from ringside.drawings.build import Build
from ringside.drawings.curves import Point, between, sampled, smooth
from ringside.drawings.hatching import Segment, crescent, hatched

Tone = Literal["near", "far", "detail"]
FAR_FRONT, FAR_REAR = (0.062, 0.012), (0.13, 0.012)
SHADE_SLOPE = 58.0


@dataclass(frozen=True, slots=True)
class Line:
    name: str
    knots: tuple[Point, ...]
    weight: float = 1.0
    taper: tuple[float, float] = (0.3, 0.3)
    tone: Tone = "near"
    filled: bool = False


@dataclass(frozen=True, slots=True)
class Frame:
    """A build with its landmarks, and the ways to name a place on the dog."""

    build: Build
    marks: Mapping[str, Point]

    def at(self, name: str, x: float = 0.0, y: float = 0.0) -> Point:
        mark = self.marks[name]
        return (mark[0] + x, mark[1] + y)

    def on(self, a: str, b: str, t: float, aside: float = 0.0) -> Point:
        return between(self.marks[a], self.marks[b], t, aside)

    def head(self, u: float, v: float) -> Point:
        """In head lengths from the occiput: u along skull and bridge, v up from them."""
        occiput, nose = complex(*self.marks["occiput"]), complex(*self.marks["nose"])
        point = occiput + complex(u, v) * (nose - occiput) / complex(1.03, -0.11)
        return (point.real, point.imag)

    def face(self, t: float, v: float) -> Point:
        """As `head`, with t 0 at the stop and 1 at the end of the nose, whatever the length of the muzzle."""
        stop = 1.0 - self.build.muzzle
        return self.head(stop + t * self.build.muzzle, v)


def near_lines(frame: Frame) -> list[Line]:
    return [
        topline(frame),
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


def skull(frame: Frame) -> tuple[Point, ...]:
    drop = 0.07 * frame.build.stop
    return (
        frame.head(0.01, 0.012),
        frame.head(0.12, 0.045),
        frame.head(0.26, 0.058),
        frame.face(-0.22, 0.045),
        frame.face(-0.08, 0.01),
        frame.face(0.05, 0.035 - drop),
        frame.face(0.2, 0.022 - drop),
        frame.face(0.6, 0.018 - drop),
        frame.face(0.88, 0.022 - drop),
        frame.face(1.0, 0.012 - drop),
    )


def nose(frame: Frame) -> Line:
    drop = 0.07 * frame.build.stop
    knots = (
        frame.face(0.88, 0.018 - drop),
        frame.face(0.97, 0.022 - drop),
        frame.face(1.045, -0.006 - drop),
        frame.face(1.06, -0.045 - drop),
        frame.face(1.04, -0.09 - drop),
        frame.face(1.0, -0.108 - drop),
        frame.face(0.985, -0.082 - drop),
        frame.face(0.94, -0.07 - drop),
        frame.face(0.9, -0.03 - drop),
    )
    return Line("nose", knots, filled=True)


def mouth(frame: Frame) -> Line:
    knots = (
        frame.face(1.02, -0.165),
        frame.face(1.015, -0.225),
        frame.face(0.96, -0.29),
        frame.face(0.82, -0.335),
        frame.face(0.6, -0.345),
        frame.face(0.4, -0.32),
        frame.face(0.24, -0.285),
        frame.face(0.15, -0.295),
    )
    return Line("mouth", knots, 0.8, (0.5, 0.1), "detail")


def throat(frame: Frame) -> Line:
    under = frame.head(0.27, -0.53)
    chest = frame.marks["forechest"]
    knots = (
        frame.face(0.93, -0.31),
        frame.face(0.925, -0.35),
        frame.face(0.83, -0.395),
        frame.face(0.55, -0.425),
        frame.face(0.2, -0.45),
        frame.face(0.0, -0.465),
        frame.head(0.37, -0.485),
        under,
        between(under, chest, 0.3, -0.02),
        between(under, chest, 0.62, -0.016),
        between(under, chest, 0.86, 0.0),
        chest,
        frame.at("forechest", -0.006, -0.065),
        frame.at("forechest", -0.075, -0.17),
    )
    return Line("throat", knots, 1.1, (0.35, 0.2))


def front_leg(frame: Frame, name: str = "front-leg", tone: Tone = "near") -> Line:
    b = frame.build.bone
    outline = (
        frame.on("point-of-shoulder", "elbow", 0.42, 0.07),
        frame.on("point-of-shoulder", "elbow", 0.75, 0.082),
        frame.on("elbow", "front-pastern", 0.12, 0.064 * b),
        frame.on("elbow", "front-pastern", 0.5, 0.044 * b),
        frame.on("elbow", "front-pastern", 0.85, 0.036 * b),
        frame.at("front-pastern", 0.04 * b, 0.0),
        frame.on("front-pastern", "front-foot", 0.42, 0.03 * b),
        *paw(frame.at("front-foot"), b),
        frame.on("front-pastern", "front-foot", 0.5, -0.032 * b),
        frame.on("front-pastern", "front-foot", 0.15, -0.034 * b),
        frame.at("front-pastern", -0.04 * b, 0.012),
        frame.on("elbow", "front-pastern", 0.82, -0.032 * b),
        frame.on("elbow", "front-pastern", 0.45, -0.04 * b),
        frame.on("elbow", "front-pastern", 0.1, -0.056 * b),
        frame.at("elbow", -0.058 * b, 0.02),
        frame.at("elbow", -0.045, 0.055),
    )
    return Line(name, outline, 1.05, (0.15, 0.2), tone)


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


def hind_leg(frame: Frame, name: str = "hind-leg", tone: Tone = "near") -> Line:
    b = frame.build.bone
    outline = (
        frame.at("stifle", 0.06, 0.13),
        frame.at("stifle", 0.058, 0.06),
        frame.at("stifle", 0.043, 0.0),
        frame.on("stifle", "hock", 0.18, 0.058),
        frame.on("stifle", "hock", 0.5, 0.052),
        frame.on("stifle", "hock", 0.82, 0.06),
        frame.at("hock", 0.07 * b, -0.04),
        frame.on("hock", "rear-foot", 0.4, 0.04 * b),
        frame.on("hock", "rear-foot", 0.72, 0.034 * b),
        *paw(frame.at("rear-foot"), b),
        frame.on("hock", "rear-foot", 0.6, -0.028 * b),
        frame.on("hock", "rear-foot", 0.2, -0.02 * b),
        frame.at("hock", -0.014, -0.008),
        frame.at("hock", -0.01, 0.022),
        frame.on("stifle", "hock", 0.84, -0.026),
        frame.on("stifle", "hock", 0.6, -0.058),
        frame.on("stifle", "hock", 0.4, -0.115),
        frame.at("pin-bone", -0.002, -0.22),
        frame.at("pin-bone", -0.026, -0.1),
        frame.at("pin-bone", -0.02, -0.03),
        frame.at("pin-bone", 0.0, 0.015),
    )
    return Line(name, outline, 1.05, (0.15, 0.3), tone)


def paw(foot: Point, bone: float) -> tuple[Point, ...]:
    """Round the toes and back under the pads, from instep to heel."""
    shape = (
        (0.04, 0.066),
        (0.066, 0.054),
        (0.084, 0.03),
        (0.084, 0.007),
        (0.066, -0.002),
        (0.03, 0.001),
        (-0.02, -0.002),
        (-0.046, 0.006),
        (-0.052, 0.03),
    )
    return tuple((foot[0] + x * bone, foot[1] + y * bone) for x, y in shape)


def tail(frame: Frame) -> list[Line]:
    root = frame.on("croup-start", "pin-bone", 0.78, -0.045)
    under = frame.at("pin-bone", -0.005, 0.02)
    tip = frame.at("hock", -0.1, 0.07)
    outer = (
        tip,
        (tip[0] - 0.032, tip[1] + 0.07),
        (tip[0] - 0.02, tip[1] + 0.2),
        (root[0] - 0.12, root[1] - 0.2),
        (root[0] - 0.075, root[1] - 0.06),
        root,
    )
    inner = (
        under,
        (under[0] - 0.045, under[1] - 0.1),
        (tip[0] + 0.035, tip[1] + 0.2),
        (tip[0] + 0.008, tip[1] + 0.08),
        tip,
    )
    return [Line("tail-over", outer, 1.0, (0.2, 0.5)), Line("tail-under", inner, 1.0, (0.4, 0.2))]


def ear(frame: Frame) -> list[Line]:
    size = frame.build.ear_size
    top = (0.2, 0.02)

    def at(*points: Point) -> tuple[Point, ...]:
        return tuple(frame.head(top[0] + (u - top[0]) * size, top[1] + (v - top[1]) * size) for u, v in points)

    front = at((0.235, 0.012), (0.315, -0.03), (0.36, -0.12), (0.35, -0.24), (0.315, -0.36), (0.28, -0.43))
    rear = at(
        (0.28, -0.43), (0.235, -0.425), (0.16, -0.345), (0.085, -0.2), (0.065, -0.09), (0.1, -0.015), (0.15, 0.012)
    )
    fold = at((0.13, -0.03), (0.19, 0.002), (0.26, -0.03), (0.295, -0.09))
    return [
        Line("ear-front", front, 1.0, (0.2, 0.5)),
        Line("ear-rear", rear, 1.0, (0.5, 0.15)),
        Line("ear-fold", fold, 0.55, (0.1, 0.1), "detail"),
    ]


def eye(frame: Frame) -> list[Line]:
    def at(x: float, y: float) -> Point:
        return frame.head(1.0 - frame.build.muzzle - 0.035 + x, -0.085 + y)

    ball = (
        at(-0.02, -0.004),
        at(-0.006, 0.013),
        at(0.014, 0.012),
        at(0.026, -0.008),
        at(0.008, -0.022),
        at(-0.012, -0.018),
    )
    upper = (at(-0.046, -0.022), at(-0.02, 0.008), at(0.01, 0.018), at(0.032, 0.002), at(0.05, -0.03))
    lower = (at(-0.034, -0.02), at(-0.003, -0.027), at(0.034, -0.02))
    brow = (at(-0.05, 0.046), at(-0.008, 0.064), at(0.03, 0.05))
    return [
        Line("eye", ball, filled=True),
        Line("upper-lid", upper, 0.7, (0.2, 0.2), "detail"),
        Line("lower-lid", lower, 0.45, (0.2, 0.2), "detail"),
        Line("brow", brow, 0.4, (0.1, 0.1), "detail"),
    ]


def details(frame: Frame) -> list[Line]:
    def fine(name: str, *knots: Point, weight: float = 0.55) -> Line:
        return Line(name, knots, weight, (0.05, 0.05), "detail")

    b = frame.build.bone
    return [
        fine("cheek", frame.face(0.04, -0.24), frame.face(-0.08, -0.31), frame.face(-0.16, -0.4)),
        fine(
            "crest",
            frame.head(0.14, -0.35),
            frame.on("occiput", "point-of-shoulder", 0.4, 0.0),
            frame.on("occiput", "point-of-shoulder", 0.7, -0.03),
        ),
        fine(
            "blade",
            frame.on("withers", "point-of-shoulder", 0.16, -0.02),
            frame.on("withers", "point-of-shoulder", 0.5, 0.012),
            frame.on("withers", "point-of-shoulder", 0.86, 0.0),
        ),
        fine(
            "arm",
            frame.on("point-of-shoulder", "elbow", 0.0, -0.03),
            frame.on("point-of-shoulder", "elbow", 0.35, -0.045),
            frame.on("point-of-shoulder", "elbow", 0.68, -0.05),
        ),
        fine("elbow", frame.at("elbow", -0.05, 0.07), frame.at("elbow", -0.02, 0.01), frame.at("elbow", 0.0, -0.05)),
        fine(
            "rib",
            frame.at("brisket", -0.26, 0.29),
            frame.at("brisket", -0.3, 0.21),
            frame.at("brisket", -0.3, 0.14),
            weight=0.4,
        ),
        fine("flank", frame.at("stifle", 0.06, 0.12), frame.at("stifle", 0.085, 0.2), frame.at("stifle", 0.07, 0.28)),
        fine(
            "thigh",
            frame.on("hip", "stifle", 0.35, -0.06),
            frame.on("hip", "stifle", 0.7, -0.055),
            frame.on("hip", "stifle", 0.98, -0.02),
        ),
        fine(
            "tendon",
            frame.on("stifle", "hock", 0.55, -0.02),
            frame.on("stifle", "hock", 0.8, 0.002),
            frame.at("hock", 0.03, -0.02),
        ),
        *toes("front", frame.at("front-foot"), b),
        *toes("rear", frame.at("rear-foot"), b),
    ]


def toes(name: str, foot: Point, bone: float, tone: Tone = "detail") -> list[Line]:
    def at(x: float, y: float) -> Point:
        return (foot[0] + x * bone, foot[1] + y * bone)

    first = (at(0.03, 0.052), at(0.052, 0.034), at(0.052, 0.002))
    second = (at(-0.002, 0.046), at(0.018, 0.03), at(0.018, 0.002))
    return [Line(f"{name}-toe", first, 0.6, (0.1, 0.4), tone), Line(f"{name}-toe", second, 0.55, (0.1, 0.4), tone)]


def far_legs(frame: Frame) -> tuple[Line, Line]:
    ahead = Frame(frame.build, shifted(frame.marks, ("elbow", "front-pastern", "front-foot"), *FAR_FRONT))
    under = Frame(frame.build, shifted(frame.marks, ("stifle", "hock", "rear-foot"), *FAR_REAR))
    hind = hind_leg(under, "far-hind-leg", "far")
    return front_leg(ahead, "far-front-leg", "far"), replace(hind, knots=hind.knots[:-5], weight=0.9)


def far_lines(frame: Frame) -> list[Line]:
    bone = frame.build.bone
    return [
        *far_legs(frame),
        *toes("far-front", frame.at("front-foot", *FAR_FRONT), bone, "far"),
        *toes("far-rear", frame.at("rear-foot", *FAR_REAR), bone, "far"),
    ]


def shifted(marks: Mapping[str, Point], names: tuple[str, ...], x: float, y: float) -> dict[str, Point]:
    """The far legs stand a little further along and, seen from above the ground, a little higher."""
    return {name: (p[0] + x, p[1] + y) if name in names else p for name, p in marks.items()}


def solids(frame: Frame) -> dict[str, tuple[Point, ...]]:
    """The closed shapes behind the lines, for filling and for pointing at a section."""
    nape, face, jaw = back(frame), skull(frame), throat(frame).knots
    front, rear = front_leg(frame).knots, hind_leg(frame).knots
    over, under = (line.knots for line in tail(frame)[:2])
    head = (*face[:9], *nose(frame).knots[2:5], *mouth(frame).knots[1:3], *jaw[1:8])
    return {
        "head": head,
        "neck": (*nape[6:], face[0], frame.head(0.2, -0.2), *jaw[7:11], frame.at("point-of-shoulder")),
        "body": (
            *nape[1:7],
            frame.at("point-of-shoulder"),
            *jaw[10:],
            frame.at("elbow", 0.05),
            *belly(frame).knots[1:6],
            frame.on("hip", "stifle", 0.5),
            frame.at("pin-bone"),
        ),
        "tail": (*over, *under[:-1]),
        "forequarters": (frame.at("withers"), frame.at("point-of-shoulder", 0.02), *front),
        "hindquarters": (frame.at("croup-start"), *rear),
    }


def topline(frame: Frame) -> Line:
    """One sweep from the root of the tail over back, neck and skull to the nose."""
    return Line("topline", (*back(frame), *skull(frame)), 1.05, (0.5, 0.5))


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
