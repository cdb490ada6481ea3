"""What a photo or scan of a judge's signed page must be to be taken in; how it is taken is `core.intake`'s."""

from ringside.core.intake import Door

PAGE = Door(
    name="page",
    most_bytes=12 * 1024 * 1024,
    most_pixels={"JPEG": 50_000_000, "PNG": 40_000_000, "WEBP": 25_000_000},
    longest_side=2400,
    # Fewer pixels hold no handwriting that can be read. Ours, no source.
    shortest_side=600,
    takes_pdf=True,
)
