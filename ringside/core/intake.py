"""Takes a sent picture or PDF in: whatever was sent is hostile until it is seen to be one.

Rule: the byte limit; then the first bytes decide the kind, whatever the name says; then the pixel limit from the
header; then a picture is decoded, pasted into a new one and encoded again as a JPEG of our own making, so that place,
camera and colour profile go, and a file that is something else besides a picture is only a picture afterwards.
Limits: one picture; of a file that holds several views of one shot, the first. A PDF cannot be redrawn here: it is kept
as sent, outside everything that is served, and only ever handed out as a download (`core.handing_out`).
"""

import io
from collections.abc import Mapping
from dataclasses import dataclass

from PIL import Image, ImageOps

from ringside.core.denied import Denied
from ringside.core.sentences import sentence
from scoring.findings import Finding, refuses

PDF, JPEG = "application/pdf", "image/jpeg"


@dataclass(frozen=True, slots=True)
class Door:
    """What is taken in at one place. `name` begins the codes of its refusals: "photo-damaged".

    `most_pixels` are by format: JPEG, PNG, WEBP; a format without a line is not taken. Sides are in pixels.
    """

    name: str
    most_bytes: int
    most_pixels: Mapping[str, int]
    longest_side: int
    shortest_side: int = 0
    takes_pdf: bool = False
    quality: int = 85


class NotTaken(Denied):
    """A file that is not taken in; `finding` says why."""

    def __init__(self, finding: Finding) -> None:
        super().__init__(sentence(finding), 422)
        self.finding = finding


@dataclass(frozen=True, slots=True)
class Taken:
    """What is kept. `width` and `height` are the picture's, upright; 0 of a PDF."""

    content: bytes
    media_type: str
    width: int = 0
    height: int = 0

    @property
    def suffix(self) -> str:
        return suffix_of(self.media_type)


def suffix_of(media_type: str) -> str:
    return "pdf" if media_type == PDF else "jpg"


def take(content: bytes, door: Door) -> Taken:
    """The picture in the file, upright and no longer than the door's longest side, or the PDF. Raises NotTaken."""
    if len(content) > door.most_bytes:
        raise NotTaken(too_many_bytes(door))
    if door.takes_pdf and content.startswith(b"%PDF-"):
        return Taken(_whole_pdf(content, door), PDF)
    kind = _kind_of(content)
    if kind not in door.most_pixels:
        raise NotTaken(refuses(f"{door.name}-unknown-kind"))
    try:
        picture = _redrawn(content, kind, door)
    except NotTaken:
        raise
    except Exception:
        # A file made to harm can raise anything at all from within a decoder; none of it is a picture to us.
        raise NotTaken(refuses(f"{door.name}-damaged")) from None
    return Taken(_encoded(picture, door), JPEG, *picture.size)


def too_many_bytes(door: Door) -> Finding:
    return refuses(f"{door.name}-too-many-bytes", most_megabytes=door.most_bytes // 1024 // 1024)


def _kind_of(content: bytes) -> str:
    """By the first bytes. Sources: ITU-T T.81, B.1.1.3; PNG (W3C), 5.2; WebP container specification."""
    if content.startswith(b"\xff\xd8\xff"):
        return "JPEG"
    if content.startswith(b"\x89PNG\r\n\x1a\n"):
        return "PNG"
    return "WEBP" if content[:4] == b"RIFF" and content[8:12] == b"WEBP" else ""


def _whole_pdf(content: bytes, door: Door) -> bytes:
    """A PDF ends with its end mark (ISO 32000-1, 7.5.5); without one it was cut off."""
    if b"%%EOF" not in content[-2048:]:
        raise NotTaken(refuses(f"{door.name}-damaged"))
    return content


def _redrawn(content: bytes, kind: str, door: Door) -> Image.Image:
    try:
        opened = Image.open(io.BytesIO(content), formats=[kind])
    except (Image.DecompressionBombError, Image.DecompressionBombWarning):
        raise NotTaken(_too_many_pixels(kind, door)) from None
    with opened as image:
        _check_header(image, kind, door)
        image.draft("RGB", (door.longest_side, door.longest_side))
        image.thumbnail((door.longest_side, door.longest_side))
        upright = ImageOps.exif_transpose(image).convert("RGBA" if image.has_transparency_data else "RGB")
    picture = Image.new("RGB", upright.size, "white")
    picture.paste(upright, mask=upright if upright.mode == "RGBA" else None)
    return picture


def _check_header(image: Image.Image, kind: str, door: Door) -> None:
    width, height = image.size
    if width * height > door.most_pixels[kind]:
        raise NotTaken(_too_many_pixels(kind, door))
    if max(width, height) < door.shortest_side:
        raise NotTaken(refuses(f"{door.name}-too-small", least_pixels=door.shortest_side))
    # Phones keep a second view of the same shot in a JPEG; only in the other formats are several pictures a film.
    if kind != "JPEG" and getattr(image, "is_animated", False):
        raise NotTaken(refuses(f"{door.name}-animated"))


def _too_many_pixels(kind: str, door: Door) -> Finding:
    return refuses(f"{door.name}-too-many-pixels", most_megapixels=door.most_pixels[kind] // 1_000_000)


def _encoded(picture: Image.Image, door: Door) -> bytes:
    target = io.BytesIO()
    picture.save(target, "JPEG", quality=door.quality, optimize=True)
    return target.getvalue()
