from django.urls import path

from ringside.notices import views

app_name = "notices"
urlpatterns = [
    path("", views.desk, name="desk"),
    path("send/", views.send, name="send"),
    path("advance/", views.advance, name="advance"),
]
