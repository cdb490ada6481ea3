from django.urls import path

from ringside.entries import file_views, views

app_name = "entries"
urlpatterns = [
    path("", views.entry_list, name="list"),
    path("new/", views.new_entry, name="new"),
    path("number/", views.number, name="number"),
    path("list.<slug:kind>", views.export, name="export"),
    path("files/", file_views.upload, name="upload"),
    path("files/<int:file_id>/", file_views.one_file, name="file"),
    path("files/<int:file_id>/columns/", file_views.columns, name="columns"),
    path("files/<int:file_id>/again/", file_views.again, name="again"),
    path("files/<int:file_id>/lines/", file_views.lines, name="lines"),
    path("files/<int:file_id>/lines/<int:line_no>/", file_views.one_line, name="line"),
    path("files/<int:file_id>/throw-away/", file_views.throw_away, name="throw-away"),
]
