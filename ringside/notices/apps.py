from django.apps import AppConfig


class NoticesConfig(AppConfig):
    name = "ringside.notices"
    label = "notices"
