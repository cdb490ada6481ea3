from django.apps import AppConfig


class EntriesConfig(AppConfig):
    name = "ringside.entries"
    label = "entries"

    def ready(self) -> None:
        from ringside.entries.copying import copy_terms
        from ringside.shows.copying import show_copied

        show_copied.connect(copy_terms, dispatch_uid="entries")
