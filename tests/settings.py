"""The site's own settings, with what a test run needs set."""

import os

os.environ.setdefault("SECRET_KEY", "only-for-tests-" + "x" * 50)
os.environ.setdefault("ALLOWED_HOSTS", "testserver,localhost,127.0.0.1")
os.environ.setdefault("DEMO", "1")

from ringside.settings import *
from ringside.settings import BASE

STATIC_ROOT = BASE / "static"
STATICFILES_DIRS = []
STORAGES = {
    "default": {"BACKEND": "django.core.files.storage.InMemoryStorage"},
    "staticfiles": {"BACKEND": "django.contrib.staticfiles.storage.StaticFilesStorage"},
}
EMAIL_BACKEND = "django.core.mail.backends.locmem.EmailBackend"
