from django.apps import AppConfig


class FeesConfig(AppConfig):
    name = "ringside.fees"
    label = "fees"

    def ready(self) -> None:
        from ringside.fees.copying import copy_fees
        from ringside.shows.copying import show_copied

        show_copied.connect(copy_fees, dispatch_uid="fees")
