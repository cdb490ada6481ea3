"""Static files under hashed names, our ES modules' imports included."""

from typing import Any

from whitenoise.storage import CompressedManifestStaticFilesStorage

OURS = ("ring/*.js", "js/*.js")


class HashedModules(CompressedManifestStaticFilesStorage):
    """Imports are followed in our own modules only: a packed library may hold words that look like an import."""

    max_post_process_passes = 20  # our modules import one another more than five deep

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        _, patterns = self._js_module_import_aggregation_patterns
        # `import("...")` stands in comments that tell types; followed, those would run in circles.
        static = tuple(each for each in patterns if r"import\(" not in each[0])
        self.patterns += tuple((folder, static) for folder in OURS)
        super().__init__(*args, **kwargs)
