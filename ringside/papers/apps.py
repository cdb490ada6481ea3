from django.apps import AppConfig


class PapersConfig(AppConfig):
    name = "ringside.papers"
    label = "papers"
