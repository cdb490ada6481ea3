"""When judging is planned to begin."""

from django.db import models

from ringside.dogs.models import Sex
from ringside.shows.models import ShowBreed


class StartTime(models.Model):
    """The planned beginning of a breed, or of a part that is judged apart: a sex, a class of it, best of breed.

    Keyed as an `Appointment` is. `sex` and `code` are empty for an undivided breed, and for best of breed of a divided
    one. The day and the ring are those it is appointed to; `at` is local time there.
    """

    show_breed = models.ForeignKey(ShowBreed, on_delete=models.CASCADE, related_name="start_times")
    sex = models.CharField(max_length=5, choices=Sex.choices, blank=True)
    code = models.CharField(max_length=40, blank=True)
    at = models.TimeField()

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["show_breed", "sex", "code"], name="start_time_once_for_a_part"),
        ]

    def __str__(self) -> str:
        return f"{self.show_breed} {self.sex} {self.code}".strip() + f": {self.at:%H:%M}"
