from django.urls import path

from ringside.shows import views

app_name = "shows"
urlpatterns = [
    path("", views.office, name="office"),
    path("new/", views.new_show, name="new"),
    path("<slug:slug>/", views.show, name="show"),
    path("<slug:slug>/details/", views.details, name="details"),
    path("<slug:slug>/appoint/", views.appoint, name="appoint"),
    path("<slug:slug>/roles/", views.give_role, name="give-role"),
    path("<slug:slug>/roles/<int:role_id>/take/", views.take_role, name="take-role"),
]
