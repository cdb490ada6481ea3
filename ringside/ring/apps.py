from django.apps import AppConfig


class RingConfig(AppConfig):
    name = "ringside.ring"
    label = "ring"
