from django.urls import path

from ringside.photos import ring_views, send_views

app_name = "ring-photos"
urlpatterns = [
    path("photo-shell/", ring_views.shell, name="shell"),
    path("<int:ring_id>/photo/", ring_views.mark, name="mark"),
    path("<int:ring_id>/dogs/<int:entry_id>/readings/", ring_views.readings, name="readings"),
    path("<int:ring_id>/dogs/<int:entry_id>/photos/<uuid:photo_id>/", send_views.send_from_ring, name="send"),
    path("<int:ring_id>/photos/<uuid:photo_id>/", ring_views.reading, name="reading"),
    path("<int:ring_id>/photos/<uuid:photo_id>/picture/", ring_views.picture, name="picture"),
    path("<int:ring_id>/photos/<uuid:photo_id>/delete/", ring_views.delete, name="delete"),
]
