"""Pictures for tests, made on the spot: nobody's dog."""

import io
from typing import Any

from PIL import Image


def picture(kind: str = "JPEG", size: tuple[int, int] = (800, 600), **options: Any) -> bytes:
    target = io.BytesIO()
    image = Image.linear_gradient("L").resize(size).convert("RGB")
    image.save(target, kind, **options)
    return target.getvalue()


def opened(jpeg: bytes) -> Image.Image:
    image = Image.open(io.BytesIO(jpeg))
    image.load()
    return image
