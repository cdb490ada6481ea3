from django.urls import path

from ringside.papers import views

app_name = "papers"
urlpatterns = [
    path("critiques/<int:critique_id>.pdf", views.critique, name="critique"),
    path("results/<slug:slug>/<int:class_id>.pdf", views.results, name="results"),
]
