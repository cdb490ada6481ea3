"""A printed paper read back: its text by an independent reader, its structure by an independent checker."""

import io
import shutil
import subprocess
import tempfile
from typing import Any

import pytest
from pypdf import PdfReader


def pages(content: bytes) -> list[str]:
    return [page.extract_text() for page in PdfReader(io.BytesIO(content)).pages]


def text(content: bytes) -> str:
    """All the text in reading order, white space and line ends as single blanks."""
    return " ".join(" ".join(pages(content)).split())


def fonts(content: bytes) -> dict[str, bool]:
    """Each font of the paper, and whether its file is inside."""
    found: dict[str, bool] = {}
    for page in PdfReader(io.BytesIO(content)).pages:
        _fonts_of(page["/Resources"], found)
    return found


def _fonts_of(resources: Any, found: dict[str, bool]) -> None:
    for font in resources.get_object().get("/Font", {}).values():
        described = font.get_object().get("/FontDescriptor")
        found[font.get_object()["/BaseFont"]] = described is not None and "/FontFile2" in described.get_object()


def check(content: bytes) -> None:
    """Whether the checker finds the file sound; CI has it, a reader's machine may not."""
    program = shutil.which("qpdf")
    if program is None:
        pytest.skip("qpdf is not installed: the file's structure is not checked here")
    with tempfile.NamedTemporaryFile(suffix=".pdf") as file:
        file.write(content)
        file.flush()
        done = subprocess.run([program, "--check", file.name], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
