"""Head, ears and throat. Figures in head lengths, drawn by eye; lines run clockwise, the head on their right hand."""

from ringside.drawings.curves import Point, between
from ringside.drawings.frame import Frame, Line


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


# Front edge from its root to the tip, rear edge from the tip to its root, the fold inside.
EARS = {
    "drop": (
        ((0.235, 0.012), (0.315, -0.03), (0.36, -0.12), (0.35, -0.24), (0.315, -0.36), (0.28, -0.43)),
        ((0.28, -0.43), (0.235, -0.425), (0.16, -0.345), (0.085, -0.2), (0.065, -0.09), (0.1, -0.015), (0.15, 0.012)),
        ((0.13, -0.03), (0.19, 0.002), (0.26, -0.03), (0.295, -0.09)),
    ),
    "erect": (
        ((0.295, 0.0), (0.305, 0.1), (0.275, 0.22), (0.2, 0.37)),
        ((0.2, 0.37), (0.12, 0.27), (0.07, 0.14), (0.065, 0.03), (0.1, -0.03)),
        ((0.24, 0.01), (0.205, 0.1), (0.195, 0.23)),
    ),
    "folded": (
        ((0.2, 0.135), (0.3, 0.1), (0.36, 0.02), (0.39, -0.12)),
        ((0.39, -0.12), (0.3, -0.07), (0.19, -0.03), (0.105, -0.025), (0.07, 0.03), (0.12, 0.1), (0.2, 0.135)),
        ((0.12, 0.03), (0.19, 0.075), (0.28, 0.05)),
    ),
}


def ear(frame: Frame) -> list[Line]:
    size = frame.build.ear_size
    root = (0.2, 0.02)

    def at(points: tuple[Point, ...]) -> tuple[Point, ...]:
        return tuple(frame.head(root[0] + (u - root[0]) * size, root[1] + (v - root[1]) * size) for u, v in points)

    front, rear, fold = EARS[frame.build.ear]
    lines = [
        Line("ear-front", at(front), 1.0, (0.2, 0.5)),
        Line("ear-rear", at(rear), 1.0, (0.5, 0.15)),
        Line("ear-fold", at(fold), 0.55, (0.1, 0.1), "detail"),
    ]
    if frame.build.ear == "erect":
        behind = ((0.25, 0.27), (0.29, 0.345), (0.335, 0.22), (0.35, 0.055))
        lines.append(Line("far-ear", at(behind), 0.8, (0.2, 0.4)))
    return lines


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
