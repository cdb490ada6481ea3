import django.db.models.deletion
import django.db.models.functions.text
from django.conf import settings
from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [
        ("dogs", "0001_dogs_and_owners"),
        ("entries", "0005_readers"),
        ("home", "0002_consents"),
        migrations.swappable_dependency(settings.AUTH_USER_MODEL),
    ]

    operations = [
        migrations.CreateModel(
            name="Reader",
            fields=[
                ("id", models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name="ID")),
                ("email", models.EmailField(max_length=254)),
                (
                    "kind",
                    models.CharField(
                        choices=[("breeder", "the breeder"), ("co-owner", "a co-owner"), ("other", "somebody else")],
                        max_length=8,
                    ),
                ),
                ("given_at", models.DateTimeField(auto_now_add=True)),
                ("withdrawn_at", models.DateTimeField(blank=True, null=True)),
                (
                    "consent",
                    models.ForeignKey(
                        blank=True,
                        null=True,
                        on_delete=django.db.models.deletion.SET_NULL,
                        related_name="readers",
                        to="entries.consent",
                    ),
                ),
                (
                    "dog",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.CASCADE, related_name="readers", to="dogs.dog"
                    ),
                ),
                (
                    "given_by",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.SET_NULL,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
            ],
            options={
                "constraints": [
                    models.UniqueConstraint(
                        condition=models.Q(("withdrawn_at", None)),
                        fields=("dog", "email", "given_by"),
                        name="one_leave_in_force",
                    ),
                    models.CheckConstraint(
                        condition=models.Q(("email", django.db.models.functions.text.Lower("email"))),
                        name="reader_email_is_lower_case",
                    ),
                ],
            },
        ),
    ]
