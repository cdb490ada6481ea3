from django.apps import AppConfig


class ShowsConfig(AppConfig):
    name = "ringside.shows"
    label = "shows"
