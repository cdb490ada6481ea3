"""Stops reading a sent file once it is longer than its page takes."""

from collections.abc import Callable
from functools import wraps
from typing import Any

from django.core.files.uploadhandler import FileUploadHandler, StopUpload
from django.http import HttpRequest, HttpResponse
from django.views.decorators.csrf import csrf_exempt, csrf_protect

View = Callable[..., HttpResponse]


class ByteLimit(FileUploadHandler):
    """Passes the chunks on until there are more than `most` bytes; the file then never arrives in `request.FILES`."""

    def __init__(self, most: int) -> None:
        super().__init__()
        self.most, self.received, self.is_over = most, 0, False

    def receive_data_chunk(self, raw_data: bytes, start: int) -> bytes:
        self.received += len(raw_data)
        if self.received > self.most:
            self.is_over = True
            raise StopUpload(connection_reset=False)
        return raw_data

    def file_complete(self, file_size: int) -> None:
        return None


def takes_file(most: int) -> Callable[[View], View]:
    """A view that takes a file of at most so many bytes; it is given the `limit`, which tells whether there were more.

    The check of the token reads the body: so the limit stands before the check, and the check inside.
    """

    def limited(view: View) -> View:
        checked = csrf_protect(view)

        @csrf_exempt
        @wraps(view)
        def outer(request: HttpRequest, *args: Any, **kwargs: Any) -> HttpResponse:
            limit = ByteLimit(most)
            request.upload_handlers.insert(0, limit)
            return checked(request, *args, limit=limit, **kwargs)

        return outer

    return limited
