from django.apps import AppConfig


class DogsConfig(AppConfig):
    name = "ringside.dogs"
    label = "dogs"
