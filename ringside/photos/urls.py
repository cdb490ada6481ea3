from django.urls import path

from ringside.photos import lesson_views, send_views, share_views, views

app_name = "photos"
urlpatterns = [
    path("office/<slug:slug>/photos/", views.of_show, name="of-show"),
    path("photos/dogs/<int:dog_id>/", views.dog, name="dog"),
    path("photos/dogs/<int:dog_id>/over-time/", views.over_time, name="over-time"),
    path("photos/dogs/<int:dog_id>/mark/", views.mark, name="mark"),
    path("photos/dogs/<int:dog_id>/send/<uuid:public_id>/", send_views.send, name="send"),
    path("photos/<uuid:public_id>/", views.reading, name="reading"),
    path("photos/<uuid:public_id>/picture/", views.picture, name="picture"),
    path("photos/<uuid:public_id>/delete/", views.delete, name="delete"),
    path("photos/<uuid:public_id>/share/", share_views.share, name="share"),
    path("photos/<uuid:public_id>/withdraw/", share_views.withdraw, name="withdraw"),
    path("photos/shared/<str:token>/", share_views.shared, name="shared"),
    path("photos/shared/<str:token>/picture/", share_views.shared_picture, name="shared-picture"),
    path("how-a-dog-is-read/", lesson_views.breeds, name="breeds"),
    path("how-a-dog-is-read/<slug:breed>/", lesson_views.breed, name="lesson"),
    path("how-a-dog-is-read/<slug:breed>/<slug:point>.json", lesson_views.point, name="lesson-point"),
]
