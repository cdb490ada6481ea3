from django.urls import path

from ringside.home import views

app_name = "home"
urlpatterns = [path("", views.front, name="front")]
