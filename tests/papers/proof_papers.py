"""Every paper of a show of 300 breeds and 3,000 dogs, printed and read back."""

import io
import os
import resource
import time
from collections.abc import Iterable

from pypdf import PdfReader

MOST_MEGABYTES = 600


def main(share: float) -> None:
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "tests.settings")
    import django

    django.setup()
    from tests.papers.programmes import programme
    from tests.papers.test_office_papers import PAPERS

    breeds, dogs = max(2, round(300 * share)), max(20, round(3000 * share))
    show = programme(breeds, dogs)
    for size in ("A4", "letter"):
        for name, printed in PAPERS.items():
            began = time.monotonic()
            content = printed(show, size)
            took = time.monotonic() - began
            pages = read_back(name, content, range(1, dogs + 1))
            print(f"   {name}, {size}: {pages} pages, {len(content) // 1000} kB, {took:.1f} s")
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024
    print(f"   {dogs} dogs of {breeds} breeds, at most {most} MB of memory")
    assert most < MOST_MEGABYTES


def read_back(name: str, content: bytes, numbers: Iterable[int]) -> int:
    """How many pages there are; every number must be on one of them, and each page must say which it is."""
    pages = [page.extract_text() for page in PdfReader(io.BytesIO(content)).pages]
    assert all("Page " in page and " of " in page for page in pages)
    words = {word for page in pages for word in page.split()}
    missing = [] if name == "absentees" else [n for n in numbers if str(n) not in words]
    assert missing == [], f"{name}: {len(missing)} numbers are not printed"
    return len(pages)
