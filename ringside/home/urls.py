from django.urls import path

from ringside.home import views

app_name = "home"
urlpatterns = [
    path("", views.front, name="front"),
    path("my-dogs/", views.mine, name="mine"),
    path("critiques/<int:critique_id>/", views.critique, name="critique"),
]
