"""Static files under hashed names, our ES modules' imports included; a field's network need not carry our comments."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fnmatch import fnmatch
from pathlib import PurePosixPath
from typing import Any

from django.core.files.base import ContentFile
from django.core.files.storage import Storage
from whitenoise.storage import CompressedManifestStaticFilesStorage

from ringside.core.modules import joined

OURS = ("ring/*.js", "js/*.js")
# Sent with all that they import as one file.
ENTRIES = ("ring/page.js",)
# Comments that have their lines to themselves: a quarter of what the ring page would send.
COMMENT = re.compile(rb"^[ \t]*(?://[^\n]*|/\*(?:(?!\*/).)*\*/)[ \t]*\n", re.MULTILINE | re.DOTALL)


@dataclass(frozen=True)
class WithoutComments:
    """A folder of our modules, each read without its comments."""

    storage: Storage

    def open(self, path: str) -> "ContentFile[bytes]":
        with self.storage.open(path) as module:
            return ContentFile(COMMENT.sub(b"", module.read()))


@dataclass(frozen=True)
class Joined:
    """A folder of our modules, each read together with those it imports."""

    storage: WithoutComments

    def open(self, path: str) -> "ContentFile[bytes]":
        module = PurePosixPath(path)

        def read(name: str) -> str:
            return self.storage.open(str(module.with_name(f"{name}.js"))).read().decode()

        return ContentFile(joined(module.stem, read).encode())


class HashedModules(CompressedManifestStaticFilesStorage):
    """Imports are followed in our own modules only: a packed library may hold words that look like an import."""

    max_post_process_passes = 20  # our modules import one another more than five deep

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        _, patterns = self._js_module_import_aggregation_patterns
        # `import("...")` stands in comments that tell types; followed, those would run in circles.
        static = tuple(each for each in patterns if r"import\(" not in each[0])
        self.patterns += tuple((folder, static) for folder in OURS)
        super().__init__(*args, **kwargs)

    def post_process(self, paths: dict[str, Any], *args: Any, **options: Any) -> Iterator[Any]:
        lean = {name: (_sent(name, kept), path) for name, (kept, path) in paths.items()}
        yield from super().post_process(lean, *args, **options)


def _sent(name: str, kept: Storage) -> Any:
    if not any(fnmatch(name, folder) for folder in OURS):
        return kept
    return Joined(WithoutComments(kept)) if name in ENTRIES else WithoutComments(kept)
