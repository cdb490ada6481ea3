"""What a photo must be to be taken in; how it is taken is `core.intake`'s."""

from ringside.core.intake import Door

LONGEST_SIDE = 2000
MOST_BYTES = 12 * 1024 * 1024
PHOTO = Door(
    name="photo",
    most_bytes=MOST_BYTES,
    # A JPEG is decoded at a fraction of its size, so that it may be larger than what must be decoded whole.
    most_pixels={"JPEG": 50_000_000, "PNG": 25_000_000, "WEBP": 25_000_000},
    longest_side=LONGEST_SIDE,
    shortest_side=200,
    quality=88,
)
