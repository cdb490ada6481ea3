"""What is marked in each view, in the order in which a finger does it fastest, and the lines between the marks."""

from dataclasses import dataclass
from typing import Literal

from django.utils.translation import gettext_lazy as _

Kind = Literal["path", "straight", "plumb", "level", "triangle"]


@dataclass(frozen=True, slots=True)
class Landmark:
    """`where` says in words what to look and feel for."""

    code: str
    name: str
    where: str


@dataclass(frozen=True, slots=True)
class Line:
    """What is drawn for a measurement: a path through landmarks, a triangle, a
    plumb line down, a level through the first, or a straight line between the ends."""

    kind: Kind
    landmarks: tuple[str, ...]
    measurement: str


_LEFT_FRONT_LEG = (
    Landmark("left-shoulder", _("left shoulder"), _("on the left of the picture: the point of the shoulder")),
    Landmark("left-elbow", _("left elbow"), _("on the left of the picture: the middle of the elbow")),
    Landmark("left-pastern", _("left pastern"), _("on the left of the picture: the middle of the pastern joint")),
    Landmark("left-foot", _("left foot"), _("on the left of the picture: the middle of the foot on the ground")),
)
_RIGHT_FRONT_LEG = (
    Landmark("right-shoulder", _("right shoulder"), _("on the right of the picture: the point of the shoulder")),
    Landmark("right-elbow", _("right elbow"), _("on the right of the picture: the middle of the elbow")),
    Landmark("right-pastern", _("right pastern"), _("on the right of the picture: the middle of the pastern joint")),
    Landmark("right-foot", _("right foot"), _("on the right of the picture: the middle of the foot on the ground")),
)
_LEFT_REAR_LEG = (
    Landmark("left-hip", _("left hip"), _("on the left of the picture: the middle of the thigh at the hip")),
    Landmark("left-hock", _("left hock"), _("on the left of the picture: the middle of the point of hock")),
    _LEFT_FRONT_LEG[-1],
)
_RIGHT_REAR_LEG = (
    Landmark("right-hip", _("right hip"), _("on the right of the picture: the middle of the thigh at the hip")),
    Landmark("right-hock", _("right hock"), _("on the right of the picture: the middle of the point of hock")),
    _RIGHT_FRONT_LEG[-1],
)

LANDMARKS: dict[str, tuple[Landmark, ...]] = {
    "standing-side": (
        Landmark("withers", _("withers"), _("the highest point between the shoulder blades")),
        Landmark(
            "point-of-shoulder", _("point of shoulder"), _("the foremost bone of the shoulder, where the arm begins")
        ),
        Landmark("elbow", _("elbow"), _("the rearmost point of the elbow")),
        Landmark("brisket", _("brisket"), _("the lowest point of the chest, behind the elbow")),
        Landmark("front-pastern", _("front pastern"), _("the middle of the wrist joint above the front foot")),
        Landmark("front-foot", _("front foot"), _("the middle of the near front pad, on the ground")),
        Landmark("croup-start", _("start of the croup"), _("the top of the pelvis, where the back ends")),
        Landmark("pin-bone", _("pin bone"), _("the rearmost bone of the pelvis, under the tail")),
        Landmark("stifle", _("stifle"), _("the front of the knee")),
        Landmark("hock", _("hock"), _("the point of the hock, its rearmost bone")),
        Landmark("rear-foot", _("rear foot"), _("the middle of the near rear pad, on the ground")),
    ),
    "moving-side": (
        Landmark("nose", _("nose"), _("the tip of the nose")),
        Landmark("withers", _("withers"), _("the highest point between the shoulder blades")),
        Landmark("elbow", _("elbow"), _("the rearmost point of the near elbow")),
        Landmark("front-foot-lead", _("leading front foot"), _("the toe of the front foot that is furthest ahead")),
        Landmark("front-foot-trail", _("trailing front foot"), _("the toe of the front foot that is furthest back")),
        Landmark("stifle", _("stifle"), _("the front of the near knee")),
        Landmark("rear-foot-lead", _("leading rear foot"), _("the toe of the rear foot that is furthest ahead")),
        Landmark("rear-foot-trail", _("trailing rear foot"), _("the toe of the rear foot that is furthest back")),
    ),
    "front": (*_LEFT_FRONT_LEG, *_RIGHT_FRONT_LEG),
    "rear": (*_LEFT_REAR_LEG, *_RIGHT_REAR_LEG),
}


def _columns(top: str, middle: str) -> tuple[Line, ...]:
    lines = []
    for side in ("left", "right"):
        lines.append(Line("path", (f"{side}-{top}", f"{side}-{middle}", f"{side}-foot"), f"column-bend-{side}"))
        lines.append(Line("straight", (f"{side}-{top}", f"{side}-foot"), "convergence"))
    return tuple(lines)


LINES: dict[str, tuple[Line, ...]] = {
    "standing-side": (
        Line("plumb", ("withers",), "front-set"),
        Line("path", ("withers", "croup-start"), "topline-slope"),
        Line("level", ("croup-start", "pin-bone"), "croup-slope"),
        Line("path", ("croup-start", "pin-bone"), "croup-slope"),
        Line("path", ("withers", "point-of-shoulder", "elbow"), "front-angle"),
        Line("path", ("front-pastern", "front-foot"), "pastern-slope"),
        Line("path", ("pin-bone", "stifle", "hock"), "rear-angle"),
        Line("path", ("hock", "rear-foot"), "hock-angle"),
    ),
    "moving-side": (
        Line("plumb", ("nose",), "front-reach"),
        Line("triangle", ("elbow", "front-foot-lead", "front-foot-trail"), "stride-balance"),
        Line("triangle", ("stifle", "rear-foot-lead", "rear-foot-trail"), "stride-balance"),
    ),
    "front": _columns("shoulder", "pastern"),
    "rear": _columns("hip", "hock"),
}
