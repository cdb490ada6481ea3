"""Legs and feet, near and far. Figures in heights at the withers, drawn by eye; lines run clockwise round the leg."""

from collections.abc import Mapping
from dataclasses import replace

from ringside.drawings.curves import Point
from ringside.drawings.frame import Frame, Line, Tone

FAR_FRONT, FAR_REAR = (0.062, 0.012), (0.13, 0.012)


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
