from django.apps import AppConfig


class EntriesConfig(AppConfig):
    name = "ringside.entries"
    label = "entries"
