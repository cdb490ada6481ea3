from django.apps import AppConfig


class CoreConfig(AppConfig):
    name = "ringside.core"
    label = "core"
