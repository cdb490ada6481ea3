"""Every address of the site, room by room."""

from django.conf import settings
from django.urls import URLPattern, URLResolver, include, path

urlpatterns: list[URLPattern | URLResolver] = [
    path("", include("ringside.home.urls")),
    path("sign-in/", include("ringside.people.urls")),
    path("office/", include("ringside.shows.urls")),
    path("enter/", include("ringside.entries.web.urls")),
    path("office/<slug:slug>/entries/", include("ringside.entries.urls")),
    path("office/<slug:slug>/fees/", include("ringside.fees.urls")),
    path("office/<slug:slug>/times/", include("ringside.timetable.urls")),
    path("office/<slug:slug>/letters/", include("ringside.notices.urls")),
    path("office/<slug:slug>/results/", include("ringside.results.urls")),
    path("office/<slug:slug>/rings/", include("ringside.ring.office_urls")),
    path("ring/", include("ringside.ring.urls")),
    path("ring/", include("ringside.photos.ring_urls")),
    path("papers/", include("ringside.papers.urls")),
    path("", include("ringside.photos.urls")),
]

if settings.DEMO:
    urlpatterns.append(path("demo/", include("ringside.home.demo_urls")))
