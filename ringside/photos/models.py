"""Photos of dogs with what was marked on them, and how steadily a person marks."""

import uuid

from django.db import models
from django.utils.translation import gettext_lazy as _

from ringside.dogs.models import Dog
from ringside.entries.models import Consent, Entry
from ringside.people.models import Account
from ringside.shows.models import Ring


class View(models.TextChoices):
    STANDING_SIDE = "standing-side", _("standing, from the side")
    MOVING_SIDE = "moving-side", _("moving, from the side")
    FRONT = "front", _("coming, from the front")
    REAR = "rear", _("going, from the rear")


def own_name(photo: "Photo", _given: str) -> str:
    """The name under which a file is kept: ours, never the sender's."""
    return f"photos/{photo.public_id}.jpg"


class Photo(models.Model):
    """One picture of one dog. Landmarks and ground are pixels of the kept file, y downward.

    `public_id` is made by the device that took the photo, so that sending it twice keeps it once. `measured` is the
    answer of `scoring.measuring` at the last marking. Whoever holds `share_token` may read; None is not shared;
    `consent` is who agreed to it, and when. `ring` is where those who work there took the photo; it is its
    owner's to read once the breed is finished.
    """

    public_id = models.UUIDField(unique=True, default=uuid.uuid4, editable=False)
    dog = models.ForeignKey(Dog, on_delete=models.CASCADE, related_name="photos")
    entry = models.ForeignKey(Entry, null=True, blank=True, on_delete=models.SET_NULL, related_name="photos")
    ring = models.ForeignKey(Ring, null=True, blank=True, on_delete=models.SET_NULL, related_name="photos")
    view = models.CharField(max_length=16, choices=View.choices)
    taken_on = models.DateField(null=True, blank=True)
    file = models.FileField(upload_to=own_name, max_length=80)
    width = models.PositiveIntegerField()
    height = models.PositiveIntegerField()
    landmarks = models.JSONField(default=dict, blank=True)
    ground = models.JSONField(null=True, blank=True)
    click_sd_px = models.FloatField()
    withers_height_cm = models.FloatField(null=True, blank=True)
    measured = models.JSONField(default=dict, blank=True)
    share_token = models.CharField(max_length=43, null=True, blank=True, unique=True)
    consent = models.ForeignKey(Consent, null=True, blank=True, on_delete=models.SET_NULL, related_name="photos")
    uploaded_by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    uploaded_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [
            models.CheckConstraint(condition=models.Q(view__in=View.values), name="photo_view_is_known"),
            models.CheckConstraint(condition=models.Q(click_sd_px__gt=0), name="photo_click_sd_is_positive"),
        ]

    def __str__(self) -> str:
        return f"{self.dog}, {self.get_view_display()}"


class Steadiness(models.Model):
    """How far apart a person's two markings of one landmark lie: SD of a click along each axis, over the width."""

    account = models.OneToOneField(Account, on_delete=models.CASCADE, related_name="steadiness")
    sd_of_width = models.FloatField()
    landmarks = models.PositiveIntegerField()
    found_at = models.DateTimeField(auto_now=True)

    class Meta:
        verbose_name_plural = "steadiness"
        constraints = [models.CheckConstraint(condition=models.Q(sd_of_width__gt=0), name="steadiness_is_positive")]

    def __str__(self) -> str:
        return f"{self.account}: {self.sd_of_width:.2%} of the width"
