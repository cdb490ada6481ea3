from django.urls import path

from ringside.ring import office_views

app_name = "ring-office"
urlpatterns = [
    path("", office_views.rings, name="rings"),
    path("code/", office_views.make_code, name="make-code"),
    path("pairings/<int:pairing_id>/end/", office_views.end_pairing, name="end-pairing"),
    path("tablets/<int:tablet_id>/lost/", office_views.declare_lost, name="declare-lost"),
    path("file/", office_views.take_file, name="take-file"),
    path("held/<str:edit_id>/", office_views.decide, name="decide"),
]
