from django.urls import path

from ringside.ring import board, pair_views, phrases, shell, views

app_name = "ring"
urlpatterns = [
    path("pair/", pair_views.pair, name="pair"),
    path("pair/<str:code>/", pair_views.pair, name="pair-code"),
    path("shell/", shell.shell, name="shell"),
    path("phrases/<slug:breed>/<slug:language>/", phrases.phrases, name="phrases"),
    path("words/<slug:language>/", phrases.names, name="names"),
    path("worker.js", shell.worker, name="worker"),
    path("<int:ring_id>/", views.page, name="page"),
    path("<int:ring_id>/board/", board.board, name="board"),
    path("<int:ring_id>/day/", views.day, name="day"),
    path("<int:ring_id>/edits/", views.edits, name="edits"),
    path("<int:ring_id>/held/<str:edit_id>/", views.decide_held, name="decide-held"),
    path("<int:ring_id>/breeds/<int:breed_id>/candidates/", views.candidates, name="candidates"),
    path("<int:ring_id>/classes/<int:class_id>/advice/", views.advice, name="advice"),
]
