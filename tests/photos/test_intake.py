"""Hostile files are refused or become harmless; good ones come out upright, small and without a trace."""

import io
import struct
import zlib

import pytest
from PIL import Image

from ringside.core.intake import NotTaken, Taken
from ringside.core.intake import take as take_at
from ringside.core.sentences import SENTENCES
from ringside.photos.intake import LONGEST_SIDE, MOST_BYTES, PHOTO
from tests.photos.pictures import opened, picture


def take(content: bytes) -> Taken:
    return take_at(content, PHOTO)


def refusal(content: bytes) -> str:
    with pytest.raises(NotTaken) as caught:
        take(content)
    assert caught.value.finding.severity == "refuses"
    assert caught.value.finding.code in SENTENCES
    return caught.value.finding.code


def png_chunk(kind: bytes, body: bytes) -> bytes:
    return struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body))


def png_that_says_it_is(width: int, height: int) -> bytes:
    """A PNG of a few hundred bytes whose header names any size. Source: PNG specification (W3C), clause 11.2.1."""
    header = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    body = zlib.compress(bytes(10_000))
    return b"\x89PNG\r\n\x1a\n" + png_chunk(b"IHDR", header) + png_chunk(b"IDAT", body) + png_chunk(b"IEND", b"")


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_each_of_the_three_formats_becomes_a_jpeg(kind):
    taken = take(picture(kind))
    image = opened(taken.content)
    assert (image.format, image.size, (taken.width, taken.height)) == ("JPEG", (800, 600), (800, 600))


def test_a_large_photo_is_made_small():
    taken = take(picture(size=(4000, 3000)))
    assert (taken.width, taken.height) == (LONGEST_SIDE, 1500)


def test_orientation_is_put_right_and_nothing_else_of_the_camera_is_kept():
    exif = Image.Exif()
    exif[0x0112] = 6  # Orientation, turn a quarter to the right. Source: Exif 2.32, 4.6.4
    exif[0x010F] = "Camera"
    exif.get_ifd(0x8825)[1] = "N"  # GPS, 4.6.6
    exif.get_ifd(0x8825)[2] = (51.0, 30.0, 0.0)
    taken = take(picture(exif=exif, icc_profile=b"profile" * 40, comment=b"home address"))
    image = opened(taken.content)
    assert image.size == (600, 800)
    assert dict(image.getexif()) == {}
    assert not {"exif", "icc_profile", "comment"} & set(image.info)
    for trace in (b"Exif", b"Camera", b"profile", b"address"):
        assert trace not in taken.content


def test_what_is_no_picture_is_refused():
    for content in (b"", b"hello", b"%PDF-1.7\n", b"<svg xmlns='http://www.w3.org/2000/svg'/>", b"GIF89a" + bytes(100)):
        assert refusal(content) == "photo-unknown-kind"
    assert refusal(picture("GIF")) == "photo-unknown-kind"
    assert refusal(picture("TIFF")) == "photo-unknown-kind"
    assert refusal(picture("BMP")) == "photo-unknown-kind"


def test_a_hundred_megapixels_are_refused_from_the_header():
    assert refusal(png_that_says_it_is(10_000, 10_000)) == "photo-too-many-pixels"


def test_a_jpeg_whose_header_says_a_hundred_megapixels_is_refused_too():
    content = bytearray(picture(size=(400, 300)))
    at = content.index(b"\xff\xc0")  # start of frame; height and width follow. Source: ITU-T T.81, B.2.2
    content[at + 5 : at + 9] = struct.pack(">HH", 10_000, 10_000)
    assert refusal(bytes(content)) == "photo-too-many-pixels"


def test_a_bomb_is_refused():
    assert refusal(png_that_says_it_is(50_000, 50_000)) == "photo-too-many-pixels"
    assert refusal(png_that_says_it_is(60_000, 1)) in {"photo-damaged", "photo-too-many-pixels"}


def test_a_text_chunk_that_unpacks_to_gigabytes_is_refused():
    text = b"note\0\0" + zlib.compress(bytes(80_000_000))
    content = picture("PNG", size=(300, 300))
    at = content.index(b"IDAT") - 4
    assert refusal(content[:at] + png_chunk(b"zTXt", text) + content[at:]) in {"photo-damaged", "photo-unknown-kind"}


def test_too_many_bytes_are_refused_unread():
    assert refusal(picture() + bytes(MOST_BYTES)) == "photo-too-many-bytes"


@pytest.mark.parametrize("kind", ["WEBP", "PNG"])
def test_a_film_is_refused(kind):
    frames = [Image.new("RGB", (300, 300), colour) for colour in ("red", "blue")]
    target = io.BytesIO()
    frames[0].save(target, kind, save_all=True, append_images=frames[1:])
    assert refusal(target.getvalue()) == "photo-animated"


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
@pytest.mark.parametrize("part", [0.2, 0.6, 0.95])
def test_a_truncated_photo_is_refused(kind, part):
    whole = picture(kind, size=(900, 700))
    assert refusal(whole[: int(len(whole) * part)]) in {"photo-damaged", "photo-unknown-kind"}


def test_a_photo_too_small_to_mark_is_refused():
    assert refusal(picture(size=(120, 90))) == "photo-too-small"


def test_a_file_that_is_also_something_else_is_only_a_picture_afterwards():
    script = b"<script>alert(1)</script>"
    archive = b"PK\x03\x04" + script
    taken = take(picture(comment=script) + archive)
    assert script not in taken.content
    assert b"PK\x03\x04" not in taken.content
    assert opened(taken.content).size == (800, 600)


def test_what_is_transparent_stands_on_white():
    target = io.BytesIO()
    Image.new("RGBA", (300, 300), (0, 0, 0, 0)).save(target, "PNG")
    assert opened(take(target.getvalue()).content).getpixel((150, 150)) == (255, 255, 255)


@pytest.mark.parametrize("mode", ["L", "P", "CMYK", "1"])
def test_other_ways_to_hold_colour_are_read(mode):
    target = io.BytesIO()
    Image.new("RGB", (300, 300), "green").convert(mode).save(target, "JPEG" if mode == "CMYK" else "PNG")
    assert opened(take(target.getvalue()).content).mode == "RGB"
