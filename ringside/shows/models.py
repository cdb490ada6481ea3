"""A show, its rings, its breeds with their judge, its classes, and who has which role."""

from django.db import models

from ringside.dogs.models import Sex
from ringside.people.models import Account, Person


class Show(models.Model):
    """`rules` and `overlays` are codes of `scoring.rules`; days run from first_day to last_day."""

    slug = models.SlugField(max_length=60, unique=True)
    name = models.CharField(max_length=120)
    place = models.CharField(max_length=120, blank=True)
    rules = models.CharField(max_length=40, default="fci")
    overlays = models.JSONField(default=list, blank=True)
    first_day = models.DateField()
    last_day = models.DateField()
    entries_close_on = models.DateField(null=True, blank=True)
    critiques_public = models.BooleanField(default=False)

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=models.Q(last_day__gte=models.F("first_day")),
                name="show_ends_after_it_begins",
                violation_error_message="The last day lies before the first.",
            )
        ]

    def __str__(self) -> str:
        return self.name


class Role(models.Model):
    class Kind(models.TextChoices):
        OWNER = "owner", "owner of the show"
        SECRETARY = "secretary", "secretary"
        ASSISTANT = "assistant", "assistant"
        STEWARD = "steward", "steward"
        WRITER = "writer", "writer"
        JUDGE = "judge", "judge"

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="roles")
    account = models.ForeignKey(Account, on_delete=models.CASCADE, related_name="roles")
    kind = models.CharField(max_length=12, choices=Kind.choices)

    class Meta:
        constraints = [models.UniqueConstraint(fields=["show", "account", "kind"], name="role_once")]

    def __str__(self) -> str:
        return f"{self.account}: {self.kind}"


class Ring(models.Model):
    """`sequence` is the number of the last edit taken in; its row is the lock under which edits are numbered."""

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="rings")
    name = models.CharField(max_length=20)
    sequence = models.PositiveBigIntegerField(default=0)

    class Meta:
        constraints = [models.UniqueConstraint(fields=["show", "name"], name="ring_name_once")]

    def __str__(self) -> str:
        return f"Ring {self.name}"


class ShowBreed(models.Model):
    """The unit that competes for best of breed: a breed, or a variety of it."""

    show = models.ForeignKey(Show, on_delete=models.CASCADE, related_name="breeds")
    breed = models.CharField(max_length=60)
    variety = models.CharField(max_length=60, blank=True)
    judge = models.ForeignKey(Person, null=True, blank=True, on_delete=models.PROTECT, related_name="breeds_judged")
    ring = models.ForeignKey(Ring, null=True, blank=True, on_delete=models.PROTECT, related_name="breeds")
    day = models.DateField(null=True, blank=True)

    class Meta:
        constraints = [models.UniqueConstraint(fields=["show", "breed", "variety"], name="show_breed_once")]

    def __str__(self) -> str:
        return f"{self.breed} {self.variety}".strip()


class ShowClass(models.Model):
    """One class: a breed, a sex and a class code of the rules. Judge, ring and day are the breed's unless set."""

    show_breed = models.ForeignKey(ShowBreed, on_delete=models.CASCADE, related_name="classes")
    sex = models.CharField(max_length=5, choices=Sex.choices)
    code = models.CharField(max_length=40)
    order = models.PositiveIntegerField(default=0)

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["show_breed", "sex", "code"], name="show_class_once"),
            models.CheckConstraint(condition=models.Q(sex__in=["dog", "bitch"]), name="class_sex_is_known"),
        ]

    def __str__(self) -> str:
        return f"{self.show_breed} {self.sex} {self.code}"
