from django.apps import AppConfig


class HomeConfig(AppConfig):
    name = "ringside.home"
    label = "home"
