from django.urls import path

from ringside.timetable import day_views, views

app_name = "timetable"
urlpatterns = [
    path("", views.times, name="times"),
    path("days/", day_views.days, name="days"),
    path("days/rings/<int:ring_id>/", day_views.change_ring, name="change-ring"),
    path("days/rings/<int:ring_id>/remove/", day_views.remove_ring, name="remove-ring"),
]
