from django.urls import path

from ringside.results import views

app_name = "results"
urlpatterns = [
    path("", views.desk, name="desk"),
    path("<int:class_id>/", views.one_class, name="class"),
    path("<int:class_id>/publish/", views.publish, name="publish"),
    path("<int:class_id>/publish-critiques/", views.publish_critiques, name="publish-critiques"),
]
