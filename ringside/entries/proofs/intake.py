"""What a proof must be to be taken in; how it is taken is `core.intake`'s."""

from ringside.core.intake import Door

MOST_BYTES = 8 * 1024 * 1024
PROOF = Door(
    name="proof",
    most_bytes=MOST_BYTES,
    most_pixels={"JPEG": 40_000_000, "PNG": 40_000_000},
    longest_side=2400,
    takes_pdf=True,
)
