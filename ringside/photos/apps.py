from django.apps import AppConfig


class PhotosConfig(AppConfig):
    name = "ringside.photos"
    label = "photos"
