from django.urls import path

from ringside.entries.consents import views as consent_views
from ringside.entries.proofs import views as proof_views
from ringside.entries.together import views as group_views
from ringside.entries.web import views

app_name = "enter"
urlpatterns = [
    path("", views.open_shows, name="shows"),
    path("<slug:slug>/", views.show, name="show"),
    path("<slug:slug>/address/", views.address, name="address"),
    path("<slug:slug>/dogs/", views.dogs, name="dogs"),
    path("<slug:slug>/dogs/new/", views.new_dog, name="new-dog"),
    path("<slug:slug>/dogs/<int:dog_id>/", views.dog, name="dog"),
    path("<slug:slug>/dogs/<int:dog_id>/facts/", views.facts, name="facts"),
    path("<slug:slug>/dogs/<int:dog_id>/withdraw/", views.withdraw, name="withdraw"),
    path("<slug:slug>/dogs/<int:dog_id>/forget/", views.forget, name="forget-dog"),
    path("<slug:slug>/dogs/<int:dog_id>/proofs/", proof_views.send, name="send-proof"),
    path("<slug:slug>/proofs/<uuid:proof_id>/delete/", proof_views.delete, name="delete-proof"),
    path("proofs/<uuid:proof_id>/", proof_views.download, name="proof"),
    path("<slug:slug>/catalogue-address/", consent_views.own_address, name="catalogue-address"),
    path("<slug:slug>/groups/", group_views.own, name="groups"),
    path("<slug:slug>/groups/<int:group_id>/withdraw/", group_views.withdraw_own, name="withdraw-group"),
    path("<slug:slug>/waiting/<int:waiting_id>/take-back/", views.take_back, name="take-back"),
]
