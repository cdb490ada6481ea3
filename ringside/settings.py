"""Settings. A deployment sets environment variables and nothing else; README lists them."""

import os
from pathlib import Path

import dj_database_url
from csp.constants import NONE, SELF
from django.core.exceptions import ImproperlyConfigured
from django.utils.translation import get_language_info

BASE = Path(__file__).resolve().parent.parent


def switched_on(name: str) -> bool:
    return os.environ.get(name, "").strip().lower() in {"1", "true", "yes", "on"}


DEMO = switched_on("DEMO")
FIELD = switched_on("FIELD")
PLAIN_HTTP = DEMO or FIELD

DEBUG = False
SECRET_KEY = os.environ.get("SECRET_KEY", "")
if not SECRET_KEY:
    raise ImproperlyConfigured(
        "Set the environment variable SECRET_KEY to a long random text (50 characters or more); "
        "`make demo` makes one of its own."
    )
ALLOWED_HOSTS = [host.strip() for host in os.environ.get("ALLOWED_HOSTS", "").split(",") if host.strip()]
CSRF_TRUSTED_ORIGINS = [f"https://{host.lstrip('.')}" for host in ALLOWED_HOSTS if host != "*"]

INSTALLED_APPS = [
    "django.contrib.auth",
    "django.contrib.contenttypes",
    "django.contrib.sessions",
    "django.contrib.messages",
    "django.contrib.staticfiles",
    "django_htmx",
    "template_partials",
    "allauth",
    "allauth.account",
    "csp",
    "ringside.core",
    "ringside.people",
    "ringside.dogs",
    "ringside.shows",
    "ringside.entries",
    "ringside.fees",
    "ringside.timetable",
    "ringside.ring",
    "ringside.photos",
    "ringside.results",
    "ringside.notices",
    "ringside.papers",
    "ringside.home",
]

MIDDLEWARE = [
    "django.middleware.security.SecurityMiddleware",
    "whitenoise.middleware.WhiteNoiseMiddleware",
    "csp.middleware.CSPMiddleware",
    "django.contrib.sessions.middleware.SessionMiddleware",
    "django.middleware.common.CommonMiddleware",
    "django.middleware.csrf.CsrfViewMiddleware",
    "django.contrib.auth.middleware.AuthenticationMiddleware",
    "ringside.core.middleware.LanguageMiddleware",
    "django.contrib.messages.middleware.MessageMiddleware",
    "django.middleware.clickjacking.XFrameOptionsMiddleware",
    "django_htmx.middleware.HtmxMiddleware",
    "allauth.account.middleware.AccountMiddleware",
    "ringside.core.middleware.DeniedMiddleware",
]

ROOT_URLCONF = "ringside.urls"
WSGI_APPLICATION = "ringside.wsgi.application"

TEMPLATES = [
    {
        "BACKEND": "django.template.backends.django.DjangoTemplates",
        "DIRS": [BASE / "templates"],
        "APP_DIRS": True,
        "OPTIONS": {
            "builtins": ["django.templatetags.i18n"],
            "context_processors": [
                "django.template.context_processors.request",
                "django.template.context_processors.i18n",
                "django.contrib.auth.context_processors.auth",
                "django.contrib.messages.context_processors.messages",
                "ringside.core.context.site",
            ],
        },
    },
]

DATABASES = {
    "default": dj_database_url.parse(
        os.environ.get("DATABASE_URL") or f"sqlite:///{BASE / 'ringside.sqlite3'}",
        conn_max_age=None if PLAIN_HTTP else 60,
        conn_health_checks=True,
    )
}
if DATABASES["default"]["ENGINE"] == "django.db.backends.sqlite3":
    # A generator stops: with synchronous=NORMAL a power cut may roll back a save that was acknowledged.
    # Write transactions begin IMMEDIATE, since an upgrade from a read fails at once under contention.
    DATABASES["default"]["OPTIONS"] = {
        "transaction_mode": "IMMEDIATE",
        "timeout": 20,
        "init_command": "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA foreign_keys=ON;",
    }

CACHES = {"default": {"BACKEND": "django.core.cache.backends.db.DatabaseCache", "LOCATION": "django_cache"}}

DEFAULT_AUTO_FIELD = "django.db.models.BigAutoField"
AUTH_USER_MODEL = "people.Account"
AUTHENTICATION_BACKENDS = ["allauth.account.auth_backends.AuthenticationBackend"]
LOGIN_URL = "account_request_login_code"
LOGIN_REDIRECT_URL = "home:front"

# Sign-in is a code by e-mail; nobody has a password.
ACCOUNT_USER_MODEL_USERNAME_FIELD = None
ACCOUNT_LOGIN_METHODS = {"email"}
ACCOUNT_SIGNUP_FIELDS = ["email*"]
ACCOUNT_LOGIN_BY_CODE_ENABLED = True
ACCOUNT_LOGIN_BY_CODE_MAX_ATTEMPTS = 5
ACCOUNT_LOGIN_BY_CODE_TIMEOUT = 900
ACCOUNT_EMAIL_VERIFICATION = "none"
ACCOUNT_EMAIL_SUBJECT_PREFIX = ""
ACCOUNT_EMAIL_NOTIFICATIONS = False
ACCOUNT_PREVENT_ENUMERATION = True
ACCOUNT_ADAPTER = "ringside.people.adapter.Adapter"
# All tablets and phones of a show share one address: the limits go by account, those by address stay wide.
ACCOUNT_RATE_LIMITS = {
    "request_login_code": "300/m/ip,3/m/key",
    "login": "300/m/ip",
    "login_failed": "300/m/ip,5/5m/key",
}

# English is in the code; every folder under locale/ is a language beside it, by its own name.
LOCALE_PATHS = [BASE / "locale"]
LANGUAGE_CODE = "en"
LANGUAGES = [
    (code, get_language_info(code)["name_local"])
    for code in ("en", *sorted(folder.name for folder in LOCALE_PATHS[0].iterdir() if folder.is_dir()))
]
LANGUAGE_COOKIE_AGE = 60 * 60 * 24 * 365
LANGUAGE_COOKIE_SAMESITE = "Lax"
LANGUAGE_COOKIE_SECURE = not PLAIN_HTTP
FORMAT_MODULE_PATH = ["ringside.formats"]
TIME_ZONE = os.environ.get("TIME_ZONE", "UTC")
USE_I18N = True
USE_TZ = True

STATIC_URL = "/static/"
STATIC_ROOT = Path(os.environ.get("STATIC_ROOT") or BASE / "build" / "static")
STATICFILES_DIRS = [BASE / "static"]
STORAGES = {
    "default": {"BACKEND": "django.core.files.storage.FileSystemStorage"},
    "staticfiles": {"BACKEND": "ringside.core.static.HashedModules"},
}
MEDIA_ROOT = Path(os.environ.get("MEDIA_ROOT") or BASE / "build" / "media")

# How long after the last show somebody had to do with their address is kept; `manage.py forget_contacts`, once a day.
CONTACTS_KEPT_DAYS = int(os.environ.get("CONTACTS_KEPT_DAYS", "1095"))

DATA_UPLOAD_MAX_MEMORY_SIZE = 4 * 1024 * 1024
DATA_UPLOAD_MAX_NUMBER_FIELDS = 5000

EMAIL_BACKEND = (
    "django.core.mail.backends.smtp.EmailBackend"
    if os.environ.get("EMAIL_HOST")
    else "django.core.mail.backends.console.EmailBackend"
)
EMAIL_HOST = os.environ.get("EMAIL_HOST", "localhost")
EMAIL_PORT = int(os.environ.get("EMAIL_PORT", "587"))
EMAIL_HOST_USER = os.environ.get("EMAIL_HOST_USER", "")
EMAIL_HOST_PASSWORD = os.environ.get("EMAIL_HOST_PASSWORD", "")
EMAIL_USE_TLS = not switched_on("EMAIL_WITHOUT_TLS")
EMAIL_TIMEOUT = 20
DEFAULT_FROM_EMAIL = os.environ.get("DEFAULT_FROM_EMAIL", "ringside@localhost")

CONTENT_SECURITY_POLICY = {
    "DIRECTIVES": {
        "default-src": [NONE],
        "script-src": [SELF],
        "style-src": [SELF],
        "img-src": [SELF, "data:", "blob:"],
        "font-src": [SELF],
        "connect-src": [SELF],
        "media-src": [SELF, "blob:"],
        "worker-src": [SELF],
        "manifest-src": [SELF],
        "form-action": [SELF],
        "frame-ancestors": [NONE],
        "base-uri": [NONE],
    }
}
X_FRAME_OPTIONS = "DENY"
SECURE_REFERRER_POLICY = "same-origin"
SESSION_COOKIE_AGE = 60 * 60 * 24 * 14
SESSION_COOKIE_SAMESITE = "Lax"
CSRF_FAILURE_VIEW = "ringside.core.stale.stale"
SESSION_COOKIE_SECURE = CSRF_COOKIE_SECURE = not PLAIN_HTTP
SECURE_SSL_REDIRECT = not PLAIN_HTTP
SECURE_HSTS_SECONDS = 0 if PLAIN_HTTP else 60 * 60 * 24 * 365
if switched_on("BEHIND_PROXY"):
    # Only for a proxy that always sets this header itself; otherwise anyone could claim to be on TLS.
    SECURE_PROXY_SSL_HEADER = ("HTTP_X_FORWARDED_PROTO", "https")
# Whether the whole domain and its other hosts are TLS for ever is for whoever owns the domain to say.
SILENCED_SYSTEM_CHECKS = ["security.W005", "security.W021"]

DJANGO_HTMX = {"includeIndicatorStyles": False}

LOGGING = {
    "version": 1,
    "disable_existing_loggers": False,
    "handlers": {"console": {"class": "logging.StreamHandler"}},
    "root": {"handlers": ["console"], "level": "WARNING"},
}
