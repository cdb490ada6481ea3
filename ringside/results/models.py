"""Results: what the judge signed, as rows; and what has been published."""

import uuid
from typing import Self

from django.db import models
from django.utils.translation import gettext_lazy as _
from django.utils.translation import pgettext_lazy

from ringside.core.intake import suffix_of
from ringside.dogs.models import Sex
from ringside.entries.models import Entry
from ringside.people.models import Account, Person
from ringside.shows.models import Show, ShowBreed, ShowClass

# What a result says of a dog that the judge has not seen. One that was excused was in the ring.
NEVER_THERE = ("absent", "withdrawn")


class Placing(models.Model):
    """One dog's result in one class, taken from the signed class card."""

    show_class = models.ForeignKey(ShowClass, on_delete=models.CASCADE, related_name="placings")
    entry = models.OneToOneField(Entry, on_delete=models.PROTECT, related_name="placing")
    presence = models.CharField(max_length=20, default="present")
    grade = models.CharField(max_length=40, blank=True)
    reason = models.TextField(blank=True)
    place = models.PositiveSmallIntegerField(null=True, blank=True)

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["show_class", "place"], name="place_once"),
            models.CheckConstraint(
                condition=models.Q(place__isnull=True) | models.Q(place__gte=1), name="place_from_1"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.entry}: {self.place or self.grade or self.presence}"


class Publication(models.Model):
    """A class whose results may be seen by exhibitors and the public."""

    show_class = models.OneToOneField(ShowClass, on_delete=models.CASCADE, related_name="publication")
    at = models.DateTimeField(auto_now_add=True)
    by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")

    def __str__(self) -> str:
        return f"{self.show_class} published"


class CritiqueQuerySet(models.QuerySet["Critique"]):
    def published(self) -> Self:
        """Those that may be read: of published classes, but for a dog whose result says that it never was there."""
        return self.filter(entry__show_class__publication__isnull=False).exclude(
            entry__placing__presence__in=NEVER_THERE
        )


class Critique(models.Model):
    """A signed critique, frozen in one language as it was signed; `fingerprint` is of its content, not of any person.

    `judge` is who signed it; empty in old ones, which the judge of the class signed. `paper` holds what the printed
    page shows (marks, words, grade), so that later changes of data do not alter it.
    """

    entry = models.ForeignKey(Entry, on_delete=models.PROTECT, related_name="critiques")
    language = models.CharField(max_length=2)
    sentences = models.JSONField(default=list)
    paper = models.JSONField(default=dict)
    fingerprint = models.CharField(max_length=64)
    signed_at = models.DateTimeField()
    judge = models.ForeignKey(Person, null=True, blank=True, on_delete=models.PROTECT, related_name="+")

    objects = CritiqueQuerySet.as_manager()

    class Meta:
        constraints = [models.UniqueConstraint(fields=["entry", "language"], name="critique_once_a_language")]

    def __str__(self) -> str:
        return f"{self.entry} ({self.language})"

    @property
    def signed_by(self) -> Person | None:
        """The judge who signed it, whoever judges there now."""
        return self.judge or self.entry.show_class.appointed.judge


class DayChange(models.Model):
    """What was changed about an entry on the day, and why: moved, withdrawn, added at the ring.

    `before` and `after` name the class; `reason` is a code of the rules' reasons, or empty where `note` says it.
    """

    class Kind(models.TextChoices):
        MOVED = "moved", _("moved to another class")
        WITHDRAWN = "withdrawn", _("withdrawn")
        ADDED = "added", _("added at the ring")
        BACK = "back", _("withdrawal taken back")

    entry = models.ForeignKey(Entry, on_delete=models.CASCADE, related_name="day_changes")
    kind = models.CharField(max_length=12, choices=Kind.choices)
    reason = models.CharField(max_length=40, blank=True)
    note = models.CharField(max_length=300, blank=True)
    before = models.CharField(max_length=120, blank=True)
    after = models.CharField(max_length=120, blank=True)
    by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    at = models.DateTimeField(auto_now_add=True)

    def __str__(self) -> str:
        return f"{self.entry}: {self.kind}"


class Report(models.Model):
    """A protest, an incident or a bite, as it was told to the office. For the owner of the show and the secretary."""

    class Kind(models.TextChoices):
        PROTEST = "protest", _("protest")
        INCIDENT = "incident", _("incident")
        BITE = "bite", pgettext_lazy("report", "bite")

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="reports")
    entry = models.ForeignKey(Entry, null=True, blank=True, on_delete=models.PROTECT, related_name="reports")
    kind = models.CharField(max_length=12, choices=Kind.choices)
    text = models.TextField(max_length=5000)
    by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    at = models.DateTimeField(auto_now_add=True)

    def __str__(self) -> str:
        return f"{self.kind} at {self.show}"


class Correction(models.Model):
    """A change to a published result: what it was, what it is, who changed it and why. Never changed, never deleted."""

    entry = models.ForeignKey(Entry, on_delete=models.PROTECT, related_name="corrections")
    why = models.CharField(max_length=300)
    before = models.JSONField(default=dict)
    after = models.JSONField(default=dict)
    by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    at = models.DateTimeField(auto_now_add=True)

    def __str__(self) -> str:
        return f"{self.entry} corrected"


class AwardGiven(models.Model):
    """One award of a breed as the judge signed it: the entry it went to, or withheld. Undecided ones have no row.

    A cancelled one was published and then taken from its dog, and nobody has it.

    `award` is a code of the rules; `sex` is set where there is one award for each sex.
    """

    show_breed = models.ForeignKey(ShowBreed, on_delete=models.CASCADE, related_name="awards")
    award = models.CharField(max_length=60)
    sex = models.CharField(max_length=5, choices=Sex.choices, blank=True)
    entry = models.ForeignKey(Entry, null=True, blank=True, on_delete=models.PROTECT, related_name="awards")
    withheld = models.BooleanField(default=False)
    cancelled = models.BooleanField(default=False)

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["show_breed", "award", "sex"], name="award_once_in_a_breed"),
            models.CheckConstraint(
                condition=models.Q(entry__isnull=False, withheld=False, cancelled=False)
                | models.Q(entry__isnull=True, withheld=True, cancelled=False)
                | models.Q(entry__isnull=True, withheld=False, cancelled=True),
                name="award_given_withheld_or_cancelled",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.code}: {self.entry or ('cancelled' if self.cancelled else 'withheld')}"

    @property
    def code(self) -> str:
        """As the ring's award card names it."""
        return f"{self.award}-{self.sex}" if self.sex else self.award


class AwardsPublication(models.Model):
    """A breed whose awards may be seen by exhibitors and the public."""

    show_breed = models.OneToOneField(ShowBreed, on_delete=models.CASCADE, related_name="awards_publication")
    at = models.DateTimeField(auto_now_add=True)
    by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")

    def __str__(self) -> str:
        return f"awards of {self.show_breed} published"


class BreedGroup(models.Model):
    """The group of breeds that the office put a breed into, where the rules' data name none or another."""

    show_breed = models.OneToOneField(ShowBreed, on_delete=models.CASCADE, related_name="group")
    group = models.CharField(max_length=40)

    def __str__(self) -> str:
        return f"{self.show_breed} in group {self.group}"


class Final(models.Model):
    """A final that this show holds: an award of the rules beyond the breed, in one group or in the whole show.

    `is_signed` says that the judge has signed the paper the places were recorded from.
    """

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="finals")
    award = models.CharField(max_length=60)
    group = models.CharField(max_length=40, blank=True)
    judge = models.ForeignKey(Person, null=True, blank=True, on_delete=models.PROTECT, related_name="finals_judged")
    is_signed = models.BooleanField(default=False)
    published_at = models.DateTimeField(null=True, blank=True)

    class Meta:
        constraints = [models.UniqueConstraint(fields=["show", "award", "group"], name="final_once")]

    def __str__(self) -> str:
        return f"{self.award} {self.group}".strip()


class Finalist(models.Model):
    """A dog in a final: its place, or that it did not come. Those that came and were not placed have no row."""

    final = models.ForeignKey(Final, on_delete=models.CASCADE, related_name="finalists")
    entry = models.ForeignKey(Entry, on_delete=models.PROTECT, related_name="finals")
    place = models.PositiveSmallIntegerField(null=True, blank=True)

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["final", "entry"], name="finalist_once"),
            models.UniqueConstraint(fields=["final", "place"], name="final_place_once"),
            models.CheckConstraint(
                condition=models.Q(place__isnull=True) | models.Q(place__gte=1), name="final_place_from_1"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.entry}: {self.place or 'absent'}"


class AwardCorrection(models.Model):
    """A change to a published award or final: who had it, who has it, who changed it and why. Never deleted.

    `place` is the place in a final. `before` and `after` are entries; neither stands for withheld or cancelled, which
    `told` says in words.
    """

    class Cause(models.TextChoices):
        CORRECTED = "corrected", _("corrected")
        CANCELLED = "cancelled", _("cancelled")
        PASSED_ON = "passed-on", _("passed on as the rules say")

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="award_corrections")
    show_breed = models.ForeignKey(ShowBreed, null=True, on_delete=models.CASCADE, related_name="award_corrections")
    final = models.ForeignKey(Final, null=True, on_delete=models.CASCADE, related_name="corrections")
    award = models.CharField(max_length=60)
    sex = models.CharField(max_length=5, choices=Sex.choices, blank=True)
    place = models.PositiveSmallIntegerField(null=True, blank=True)
    before = models.ForeignKey(Entry, null=True, on_delete=models.PROTECT, related_name="+")
    after = models.ForeignKey(Entry, null=True, on_delete=models.PROTECT, related_name="+")
    cause = models.CharField(max_length=12, choices=Cause.choices)
    told = models.CharField(max_length=120, blank=True)
    why = models.CharField(max_length=300)
    by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=models.Q(show_breed__isnull=False, final__isnull=True)
                | models.Q(show_breed__isnull=True, final__isnull=False),
                name="correction_of_an_award_or_a_final",
            )
        ]

    def __str__(self) -> str:
        return f"{self.award} {self.cause}"


def own_page_name(paper: "SignedPage", _: str) -> str:
    """The name under which a page is kept: ours, never the sender's."""
    return f"pages/{paper.public_id}.{suffix_of(paper.media_type)}"


def page_kind_is_known(name: str) -> models.CheckConstraint:
    kinds = ["application/pdf", "image/jpeg"]
    is_known = models.Q(page="", media_type="") | (~models.Q(page="") & models.Q(media_type__in=kinds))
    return models.CheckConstraint(condition=is_known, name=name)


class SignedPage(models.Model):
    """What the office typed in from a page that the judge signed.

    `judge` is who signed it, `typed_by` who typed it last. `page` is a photo or PDF of it; `why_no_page` says why there
    is none. Where both are empty it counts as not signed.
    """

    judge = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+")
    typed_by = models.ForeignKey(Account, null=True, on_delete=models.SET_NULL, related_name="+")
    typed_at = models.DateTimeField()
    public_id = models.UUIDField(unique=True, default=uuid.uuid4, editable=False)
    page = models.FileField(upload_to=own_page_name, max_length=80, blank=True)
    media_type = models.CharField(max_length=20, blank=True)
    why_no_page = models.CharField(max_length=300, blank=True)

    class Meta:
        abstract = True

    @property
    def is_attested(self) -> bool:
        """Whether the judge's page is here, or it is said why not."""
        return bool(self.page or self.why_no_page)


class PaperClass(SignedPage):
    """A class judged on paper and typed in by the office from the page that the judge signed."""

    show_class = models.OneToOneField(ShowClass, on_delete=models.CASCADE, related_name="paper")

    class Meta:
        constraints = [page_kind_is_known("page_kind_is_known")]

    def __str__(self) -> str:
        return f"{self.show_class} on paper"


class PaperAwards(SignedPage):
    """A breed's awards decided on paper and typed in by the office from the page that the judge signed."""

    show_breed = models.OneToOneField(ShowBreed, on_delete=models.CASCADE, related_name="paper_awards")

    class Meta:
        verbose_name_plural = "awards on paper"
        constraints = [page_kind_is_known("awards_page_kind_is_known")]

    def __str__(self) -> str:
        return f"awards of {self.show_breed} on paper"
