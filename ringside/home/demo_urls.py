from django.urls import path

from ringside.home import demo_views

app_name = "demo"
urlpatterns = [path("<slug:face>/", demo_views.enter, name="enter")]
