"""Static files under hashed names, ES modules' imports included."""

from whitenoise.storage import CompressedManifestStaticFilesStorage


class HashedModules(CompressedManifestStaticFilesStorage):
    support_js_module_import_aggregation = True
