"""What the pages that show a photo are filled with."""

from typing import Any

from django.http import FileResponse

from ringside.photos.drawn import drawn_lines
from ringside.photos.measured import reading_of
from ringside.photos.models import Photo


def reading_page(photo: Photo, name: str, picture_address: str) -> dict[str, Any]:
    return {
        "photo": photo,
        "name": name,
        "picture_address": picture_address,
        "reading": reading_of(photo),
        "drawn": drawn_lines(photo),
    }


def picture_of(photo: Photo) -> FileResponse:
    """The kept file, as a picture and as nothing else."""
    answer = FileResponse(photo.file.open("rb"), content_type="image/jpeg")
    answer["X-Content-Type-Options"] = "nosniff"
    answer["Cross-Origin-Resource-Policy"] = "same-origin"
    answer["Content-Disposition"] = "inline"
    answer["Cache-Control"] = "private, max-age=3600"
    return answer
