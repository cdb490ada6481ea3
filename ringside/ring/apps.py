from django.apps import AppConfig


class RingConfig(AppConfig):
    name = "ringside.ring"
    label = "ring"

    def ready(self) -> None:
        from ringside.ring.leaving import keep_used_ring
        from ringside.shows.rings import ring_goes

        ring_goes.connect(keep_used_ring, dispatch_uid="ring")
