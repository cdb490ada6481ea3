"""A show, its rings, its breeds with their judge, its classes, and who has which role.

Who judges a class, in which ring, on which day is answered in one place: `ShowClass.appointed`, and `appointed.py` for
questions to the database.
"""

from dataclasses import dataclass
from datetime import date

from django.db import models
from django.utils.translation import gettext_lazy as _

from ringside.dogs.models import Sex
from ringside.people.models import Account, Person


class Show(models.Model):
    """`rules` and `overlays` are codes of `scoring.rules`; days run from first_day to last_day.

    Entries are taken from `entries_open` to the end of `entries_close`, where those are set. `classes_offered` are
    codes of the rules; none means all of them.
    """

    slug = models.SlugField(max_length=60, unique=True)
    name = models.CharField(max_length=120)
    place = models.CharField(max_length=120, blank=True)
    rules = models.CharField(max_length=40, default="fci")
    overlays = models.JSONField(default=list, blank=True)
    first_day = models.DateField()
    last_day = models.DateField()
    entries_open = models.DateField(null=True, blank=True)
    entries_close = models.DateField(null=True, blank=True)
    classes_offered = models.JSONField(default=list, blank=True)
    critiques_public = models.BooleanField(default=False)

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=models.Q(last_day__gte=models.F("first_day")),
                name="show_ends_after_it_begins",
                violation_error_message=_("The last day lies before the first."),
            )
        ]

    def __str__(self) -> str:
        return self.name

    @property
    def name_and_place(self) -> str:
        return ", ".join(filter(None, (self.name, self.place)))


class Role(models.Model):
    class Kind(models.TextChoices):
        OWNER = "owner", _("owner of the show")
        SECRETARY = "secretary", _("secretary")
        ASSISTANT = "assistant", _("assistant")
        STEWARD = "steward", _("steward")
        WRITER = "writer", _("writer")
        JUDGE = "judge", _("judge")

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="roles")
    account = models.ForeignKey(Account, on_delete=models.CASCADE, related_name="roles")
    kind = models.CharField(max_length=12, choices=Kind.choices)

    class Meta:
        constraints = [models.UniqueConstraint(fields=["show", "account", "kind"], name="role_once")]

    def __str__(self) -> str:
        return f"{self.account}: {self.kind}"


def role_words(kinds: str) -> str:
    """Roles kept as "judge" or "owner, secretary", in the reader's language."""
    labels = dict(Role.Kind.choices)
    return ", ".join(str(labels.get(kind, kind)) for kind in kinds.split(", "))


class Ring(models.Model):
    """`place` is where it is found on the ground.

    `sequence` is the number of the last edit taken in; its row is the lock under which edits are numbered.
    """

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="rings")
    name = models.CharField(max_length=20)
    place = models.CharField(max_length=60, blank=True)
    sequence = models.PositiveBigIntegerField(default=0)

    class Meta:
        constraints = [models.UniqueConstraint(fields=["show", "name"], name="ring_name_once")]

    def __str__(self) -> str:
        return f"Ring {self.name}"


@dataclass(frozen=True, slots=True)
class Appointed:
    """Who judges a part of a breed, in which ring, on which day; None where it is not known yet."""

    judge: Person | None
    ring: Ring | None
    day: date | None


class ShowBreed(models.Model):
    """The unit that competes for best of breed: a breed, or a variety of it.

    Judge, ring and day hold for all of it but the parts that have an `Appointment` of their own. `awards_judged_by`
    is who signed the breed's awards, where somebody else is appointed since.
    """

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="breeds")
    breed = models.CharField(max_length=60)
    variety = models.CharField(max_length=60, blank=True)
    judge = models.ForeignKey(Person, null=True, blank=True, on_delete=models.PROTECT, related_name="breeds_judged")
    ring = models.ForeignKey(Ring, null=True, blank=True, on_delete=models.PROTECT, related_name="breeds")
    day = models.DateField(null=True, blank=True)
    awards_judged_by = models.ForeignKey(Person, null=True, blank=True, on_delete=models.PROTECT, related_name="+")

    class Meta:
        constraints = [models.UniqueConstraint(fields=["show", "breed", "variety"], name="show_breed_once")]

    def __str__(self) -> str:
        return f"{self.breed} {self.variety}".strip()

    def appointed_for(self, sex: str = "", code: str = "") -> Appointed:
        """For a class, a sex, or (neither given) best of breed: what the part leaves open is taken from the wider one.

        Reads `appointments`: fetch them before with `appointed.appointments_of`, or each breed costs a query.
        """
        own = {(one.sex, one.code): one for one in self.appointments.all()}
        parts = [own[key] for key in dict.fromkeys([(sex, code), (sex, "")]) if key in own]
        wider = [*parts, self]
        return Appointed(
            judge=next((one.judge for one in wider if one.judge_id), None),
            ring=next((one.ring for one in wider if one.ring_id), None),
            day=next((one.day for one in wider if one.day), None),
        )

    @property
    def appointed(self) -> Appointed:
        """For best of breed and the breed's other awards."""
        found = self.appointed_for()
        return Appointed(self.awards_judged_by, found.ring, found.day) if self.awards_judged_by_id else found


class Appointment(models.Model):
    """What differs from its breed for a part of it: one sex, one class of a sex, or best of breed (both empty).

    What is None here is as for the sex, and then as for the breed.
    """

    show_breed = models.ForeignKey(ShowBreed, on_delete=models.CASCADE, related_name="appointments")
    sex = models.CharField(max_length=5, choices=Sex.choices, blank=True)
    code = models.CharField(max_length=40, blank=True)
    judge = models.ForeignKey(Person, null=True, blank=True, on_delete=models.PROTECT, related_name="appointments")
    ring = models.ForeignKey(Ring, null=True, blank=True, on_delete=models.PROTECT, related_name="appointments")
    day = models.DateField(null=True, blank=True)

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["show_breed", "sex", "code"], name="appointment_once_for_a_part"),
            models.CheckConstraint(
                condition=models.Q(sex__in=["dog", "bitch"]) | models.Q(sex="", code=""), name="appointment_has_a_sex"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.show_breed} {self.sex} {self.code}: {self.judge}"


class ShowClass(models.Model):
    """One class: a breed, a sex and a class code of the rules.

    `judged_by` is who signed it, where somebody else is appointed since.
    """

    show_breed = models.ForeignKey(ShowBreed, on_delete=models.CASCADE, related_name="classes")
    sex = models.CharField(max_length=5, choices=Sex.choices)
    code = models.CharField(max_length=40)
    order = models.PositiveIntegerField(default=0)
    judged_by = models.ForeignKey(Person, null=True, blank=True, on_delete=models.PROTECT, related_name="+")

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["show_breed", "sex", "code"], name="show_class_once"),
            models.CheckConstraint(condition=models.Q(sex__in=["dog", "bitch"]), name="class_sex_is_known"),
        ]

    def __str__(self) -> str:
        return f"{self.show_breed} {self.sex} {self.code}"

    @property
    def appointed(self) -> Appointed:
        """Who judges it (who judged it, once signed), in which ring, on which day."""
        found = self.show_breed.appointed_for(self.sex, self.code)
        return Appointed(self.judged_by, found.ring, found.day) if self.judged_by_id else found
