from django.urls import path

from ringside.entries import entry_views, file_views, views, waiting_views
from ringside.entries.consents import views as consent_views
from ringside.entries.proofs import views as proof_views
from ringside.entries.together import views as group_views

app_name = "entries"
urlpatterns = [
    path("", views.entry_list, name="list"),
    path("new/", views.new_entry, name="new"),
    path("number/", views.number, name="number"),
    path("list.<slug:kind>", views.export, name="export"),
    path("terms/", entry_views.terms, name="terms"),
    path("groups/", group_views.office, name="groups"),
    path("groups/<int:group_id>/withdraw/", group_views.withdraw, name="withdraw-group"),
    path("<int:entry_id>/", entry_views.entry, name="entry"),
    path("<int:entry_id>/handler/", entry_views.handler, name="handler"),
    path("<int:entry_id>/tick/", proof_views.tick, name="tick"),
    path("<int:entry_id>/consents/", consent_views.record_paper, name="record-consent"),
    path("<int:entry_id>/consents/<int:consent_id>/end/", consent_views.end_by_paper, name="end-consent"),
    path("waiting/", waiting_views.wait_list, name="waiting"),
    path("waiting/<int:waiting_id>/decide/", waiting_views.decide, name="decide"),
    path("files/", file_views.upload, name="upload"),
    path("files/<int:file_id>/", file_views.one_file, name="file"),
    path("files/<int:file_id>/columns/", file_views.columns, name="columns"),
    path("files/<int:file_id>/again/", file_views.again, name="again"),
    path("files/<int:file_id>/lines/", file_views.lines, name="lines"),
    path("files/<int:file_id>/lines/<int:line_no>/", file_views.one_line, name="line"),
    path("files/<int:file_id>/throw-away/", file_views.throw_away, name="throw-away"),
]
