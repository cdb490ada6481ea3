from django.urls import path

from ringside.fees import setting_views, views

app_name = "fees"
urlpatterns = [
    path("", views.account_list, name="list"),
    path("list.<slug:kind>", views.export, name="export"),
    path("invoices/", views.missing_invoices, name="missing-invoices"),
    path("set-up/", setting_views.set_up, name="set-up"),
    path("set-up/new/", setting_views.new_line, name="new-line"),
    path("set-up/<int:line_id>/", setting_views.line, name="line"),
    path("set-up/<int:line_id>/remove/", setting_views.remove_line, name="remove-line"),
    path("exhibitors/<int:exhibitor_id>/", views.account, name="account"),
    path("exhibitors/<int:exhibitor_id>/member/", views.member, name="member"),
    path("exhibitors/<int:exhibitor_id>/invoice/", views.invoice, name="invoice"),
    path("payments/<int:payment_id>/strike/", views.strike, name="strike"),
    path("entries/<int:entry_id>/", views.change, name="change"),
]
