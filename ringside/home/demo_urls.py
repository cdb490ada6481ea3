from django.urls import path

from ringside.home import demo_views

app_name = "demo"
urlpatterns = [
    path("portraits/<int:dog_id>.svg", demo_views.portrait, name="portrait"),
    path("<slug:face>/", demo_views.enter, name="enter"),
]
