from django.urls import path

from ringside.shows import set_up_views, views

app_name = "shows"
urlpatterns = [
    path("", views.office, name="office"),
    path("new/", views.new_show, name="new"),
    path("<slug:slug>/", views.show, name="show"),
    path("<slug:slug>/details/", views.details, name="details"),
    path("<slug:slug>/who-may/", views.who_may, name="who-may"),
    path("<slug:slug>/audit/", views.audit, name="audit"),
    path("<slug:slug>/appoint/", views.appoint, name="appoint"),
    path("<slug:slug>/breeds/<int:breed_id>/", set_up_views.breed, name="breed"),
    path("<slug:slug>/breeds/<int:breed_id>/whole/", set_up_views.appoint_whole, name="appoint-whole"),
    path("<slug:slug>/breeds/<int:breed_id>/take-away/", set_up_views.take_appointment_away, name="take-away"),
    path("<slug:slug>/copy/", set_up_views.copy, name="copy"),
    path("<slug:slug>/classes/", set_up_views.classes, name="classes"),
    path("<slug:slug>/judges/<int:person_id>/replace/", set_up_views.replace_judge, name="replace-judge"),
    path("<slug:slug>/roles/", views.give_role, name="give-role"),
    path("<slug:slug>/roles/<int:role_id>/take/", views.take_role, name="take-role"),
]
