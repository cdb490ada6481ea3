from django.urls import URLPattern

app_name = "ring"
urlpatterns: list[URLPattern] = []
