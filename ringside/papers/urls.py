from django.urls import path

from ringside.papers import desk_views, views

app_name = "papers"
urlpatterns = [
    path("critiques/<int:critique_id>.pdf", views.critique, name="critique"),
    path("show/<slug:slug>/", desk_views.desk, name="desk"),
    path("show/<slug:slug>/<slug:code>.pdf", desk_views.printed, name="printed"),
    path("results/<slug:slug>/<int:class_id>.pdf", views.results, name="results"),
]
