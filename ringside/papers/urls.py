from django.urls import URLPattern

app_name = "papers"
urlpatterns: list[URLPattern] = []
