from django.urls import URLPattern

app_name = "entries"
urlpatterns: list[URLPattern] = []
