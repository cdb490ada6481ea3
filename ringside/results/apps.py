from django.apps import AppConfig


class ResultsConfig(AppConfig):
    name = "ringside.results"
    label = "results"
