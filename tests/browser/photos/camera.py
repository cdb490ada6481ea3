"""A drawn dog of known build before a pinhole camera: its picture, and where its landmarks lie in it.

Lengths in heights at the withers. The camera stands at half the height, `distance` away, turned by `roll` about its
own axis; the dog is turned by `yaw` about a vertical through its middle.
"""

import io
import math
from dataclasses import dataclass

from PIL import Image, ImageDraw

from ringside.drawings import contours
from ringside.drawings.build import Build, landmarks
from ringside.drawings.curves import sampled, smooth
from ringside.drawings.frame import Frame
from ringside.drawings.limbs import far_legs

Place = tuple[float, float]


@dataclass(frozen=True)
class Camera:
    size: tuple[int, int] = (1600, 1200)
    distance: float = 6.0
    yaw: float = 0.0
    roll: float = 0.0
    height_px: float = 700.0  # of the dog, seen without yaw

    def sees(self, place: Place) -> Place:
        """The pixel of a place on the dog's middle plane: x ahead of the withers, y up from the ground."""
        x, y = place[0] + 0.35, place[1] - 0.5
        turned, depth = x * math.cos(math.radians(self.yaw)), x * math.sin(math.radians(self.yaw))
        by = self.height_px * self.distance / (self.distance + depth)
        right, down = turned * by, -y * by
        cos, sin = math.cos(math.radians(self.roll)), math.sin(math.radians(self.roll))
        return (self.size[0] / 2 + cos * right - sin * down, self.size[1] / 2 + sin * right + cos * down)


def places(build: Build, camera: Camera) -> dict[str, Place]:
    """Where the landmarks and the two ends of the level line lie in the picture."""
    marks = {name: camera.sees(place) for name, place in landmarks(build).items()}
    return {**marks, "ground-1": camera.sees((-1.25, 0.0)), "ground-2": camera.sees((0.6, 0.0))}


def photo(build: Build, camera: Camera) -> bytes:
    frame = Frame(build, landmarks(build))
    picture = Image.new("RGB", camera.size, "#b9c4b0")
    pen = ImageDraw.Draw(picture)
    pen.line([camera.sees((-4, 0)), camera.sees((4, 0))], fill="#6d7a63", width=4)
    for leg in far_legs(frame):
        pen.polygon([camera.sees(point) for point in sampled(smooth(leg.knots, closed=True), 6)], fill="#5d4a36")
    for knots in contours.solids(frame).values():
        pen.polygon([camera.sees(point) for point in sampled(smooth(knots, closed=True), 6)], fill="#8a6a45")
    target = io.BytesIO()
    picture.save(target, "JPEG", quality=90)
    return target.getvalue()
