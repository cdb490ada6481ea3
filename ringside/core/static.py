"""Static files under hashed names, our ES modules' imports included; a field's network need not carry our comments."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fnmatch import fnmatch
from typing import Any

from django.core.files.base import ContentFile
from django.core.files.storage import Storage
from whitenoise.storage import CompressedManifestStaticFilesStorage

OURS = ("ring/*.js", "js/*.js")
# Comments that have their lines to themselves: a quarter of what the ring page would send.
COMMENT = re.compile(rb"^[ \t]*(?://[^\n]*|/\*(?:(?!\*/).)*\*/)[ \t]*\n", re.MULTILINE | re.DOTALL)


@dataclass(frozen=True)
class WithoutComments:
    """A folder of our modules, each read without its comments."""

    storage: Storage

    def open(self, path: str) -> "ContentFile[bytes]":
        with self.storage.open(path) as module:
            return ContentFile(COMMENT.sub(b"", module.read()))


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
        ours = {name for name in paths for folder in OURS if fnmatch(name, folder)}
        lean = {name: (WithoutComments(kept) if name in ours else kept, path) for name, (kept, path) in paths.items()}
        yield from super().post_process(lean, *args, **options)
