"""Hands a kept file out as a download and as nothing else: whatever is in it, no browser shows or runs it."""

from typing import Any

from django.http import FileResponse


def as_download(file: Any, name: str, media_type: str) -> FileResponse:
    """`file` is a field's file; whether it may be handed out is asked before."""
    answer = FileResponse(file.open("rb"), as_attachment=True, filename=name, content_type=media_type)
    answer["X-Content-Type-Options"] = "nosniff"
    answer["Cross-Origin-Resource-Policy"] = "same-origin"
    answer["Content-Security-Policy"] = "sandbox; default-src 'none'"
    answer["Cache-Control"] = "private, no-store"
    return answer
