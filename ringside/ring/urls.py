from django.urls import path

from ringside.ring import views

app_name = "ring"
urlpatterns = [
    path("<int:ring_id>/", views.page, name="page"),
    path("<int:ring_id>/day/", views.day, name="day"),
    path("<int:ring_id>/edits/", views.edits, name="edits"),
    path("<int:ring_id>/classes/<int:class_id>/advice/", views.advice, name="advice"),
]
