"""The web server's door to the site."""

import os

from django.core.wsgi import get_wsgi_application

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "ringside.settings")
application = get_wsgi_application()
