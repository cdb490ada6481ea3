from django.apps import AppConfig


class PeopleConfig(AppConfig):
    name = "ringside.people"
    label = "people"
