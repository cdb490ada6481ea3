"""Dogs, who owns them, what they have won."""

from django.db import models
from django.utils.translation import gettext_lazy as _

from ringside.people.models import Person


class Sex(models.TextChoices):
    DOG = "dog", _("dog")
    BITCH = "bitch", _("bitch")


class Dog(models.Model):
    """A dog as its papers name it. `breed` and `variety` are codes of `scoring.standards`."""

    name = models.CharField("registered name", max_length=160)
    call_name = models.CharField(max_length=60, blank=True)
    breed = models.CharField(max_length=60, db_index=True)
    variety = models.CharField(max_length=60, blank=True)
    sex = models.CharField(max_length=5, choices=Sex.choices)
    born = models.DateField()
    studbook = models.CharField("studbook number", max_length=60, blank=True)
    chip = models.CharField("microchip", max_length=15, blank=True)
    sire = models.CharField(max_length=160, blank=True)
    dam = models.CharField(max_length=160, blank=True)
    breeder = models.CharField(max_length=120, blank=True)
    neutered = models.BooleanField(default=False)
    owners = models.ManyToManyField(Person, through="Ownership", related_name="dogs")

    class Meta:
        constraints = [
            models.CheckConstraint(condition=models.Q(sex__in=["dog", "bitch"]), name="dog_sex_is_known"),
            models.UniqueConstraint(
                fields=["chip"],
                condition=~models.Q(chip=""),
                name="dog_chip_once",
                violation_error_message="Another dog has this microchip number.",
            ),
        ]

    def __str__(self) -> str:
        return self.name


class Ownership(models.Model):
    dog = models.ForeignKey(Dog, on_delete=models.CASCADE)
    person = models.ForeignKey(Person, on_delete=models.CASCADE)

    class Meta:
        constraints = [models.UniqueConstraint(fields=["dog", "person"], name="owner_once")]

    def __str__(self) -> str:
        return f"{self.person} owns {self.dog}"


class Title(models.Model):
    """A confirmed title; `code` as in the rules, such as national-champion."""

    dog = models.ForeignKey(Dog, on_delete=models.CASCADE, related_name="titles")
    code = models.CharField(max_length=60)
    confirmed_on = models.DateField(null=True, blank=True)

    class Meta:
        constraints = [models.UniqueConstraint(fields=["dog", "code"], name="title_once")]

    def __str__(self) -> str:
        return self.code


class Certificate(models.Model):
    """A proof that a class asks for; `code` as in the rules, such as WCC."""

    dog = models.ForeignKey(Dog, on_delete=models.CASCADE, related_name="certificates")
    code = models.CharField(max_length=60)

    class Meta:
        constraints = [models.UniqueConstraint(fields=["dog", "code"], name="certificate_once")]

    def __str__(self) -> str:
        return self.code
