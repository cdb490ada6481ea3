from django.apps import AppConfig


class TimetableConfig(AppConfig):
    name = "ringside.timetable"
    label = "timetable"
