from django.urls import path

from ringside.home import (
    ask_views,
    check_views,
    claim_views,
    kept_views,
    owed_views,
    public_views,
    reader_views,
    share_views,
    views,
    whole_views,
)

app_name = "home"
urlpatterns = [
    path("", views.front, name="front"),
    path("my-dogs/", views.mine, name="mine"),
    path("my-dogs/owed/", owed_views.owed, name="owed"),
    path("my-dogs/kept/", kept_views.kept, name="kept"),
    path("my-dogs/kept.json", kept_views.kept_file, name="kept-file"),
    path("my-dogs/consents/<int:consent_id>/withdraw/", kept_views.withdraw_consent, name="withdraw-consent"),
    path("my-dogs/forget/", kept_views.forget, name="forget"),
    path("my-dogs/<int:dog_id>/", views.dog, name="dog"),
    path("my-dogs/<int:dog_id>/readers/", reader_views.let_read, name="let-read"),
    path("my-dogs/readers/<int:reader_id>/take-back/", reader_views.take_back, name="take-back-reading"),
    path("reading/<int:entry_id>/", reader_views.reading, name="reading"),
    path("reading/<int:entry_id>/critique.pdf", reader_views.reading_pdf, name="reading-pdf"),
    path("my-dogs/entries/<int:entry_id>/correction/", ask_views.ask, name="ask"),
    path("critiques/<int:critique_id>/", views.critique, name="critique"),
    path("critiques/<int:critique_id>/share/", share_views.share, name="share"),
    path("shares/<int:share_id>/withdraw/", share_views.withdraw, name="withdraw-share"),
    path("shared/<str:share_token>/", share_views.shared, name="shared"),
    path("check/<str:fingerprint>/", check_views.check, name="check"),
    path("results/<slug:slug>/", public_views.results, name="results"),
    path("claim/", claim_views.claim, name="claim"),
    path("claim/finish/", claim_views.finish, name="claim-finish"),
    path("office/show-in/", whole_views.show_in, name="show-in"),
    path("office/<slug:slug>/show.zip", whole_views.show_out, name="show-out"),
    path("office/<slug:slug>/requests/", ask_views.requests, name="requests"),
    path("office/<slug:slug>/requests/<int:request_id>/answer/", ask_views.answer, name="answer"),
    path("office/<slug:slug>/number-cards.pdf", claim_views.number_cards, name="number-cards"),
]
