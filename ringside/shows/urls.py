from django.urls import URLPattern

app_name = "shows"
urlpatterns: list[URLPattern] = []
