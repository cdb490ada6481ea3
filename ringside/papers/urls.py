from django.urls import path

from ringside.papers import award_views, desk_views, invoice_views, notice_views, run_views, views

app_name = "papers"
urlpatterns = [
    path("critiques/<int:critique_id>.pdf", views.critique, name="critique"),
    path("show/<slug:slug>/", desk_views.desk, name="desk"),
    path("show/<slug:slug>/critiques/", run_views.start, name="start-run"),
    path("show/<slug:slug>/critiques/<int:run_id>/", run_views.run, name="run"),
    path("show/<slug:slug>/critiques/<int:run_id>/advance/", run_views.advance, name="advance-run"),
    path("show/<slug:slug>/critiques/<int:run_id>/file/", run_views.file, name="run-file"),
    path("show/<slug:slug>/award-cards.pdf", award_views.cards, name="award-cards"),
    path("show/<slug:slug>/letters.pdf", notice_views.letters, name="notice-letters"),
    path("show/<slug:slug>/<slug:code>.pdf", desk_views.printed, name="printed"),
    path("invoices/<int:invoice_id>.pdf", invoice_views.invoice, name="invoice"),
    path("results/<slug:slug>/<int:class_id>.pdf", views.results, name="results"),
]
