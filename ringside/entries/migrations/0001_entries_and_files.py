import django.db.models.deletion
from django.conf import settings
from django.db import migrations, models


class Migration(migrations.Migration):
    initial = True

    dependencies = [
        ("dogs", "0001_dogs_and_owners"),
        ("shows", "0001_shows_and_classes"),
        migrations.swappable_dependency(settings.AUTH_USER_MODEL),
    ]

    operations = [
        migrations.CreateModel(
            name="Entry",
            fields=[
                ("id", models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name="ID")),
                ("number", models.PositiveIntegerField(blank=True, null=True, verbose_name="catalogue number")),
                (
                    "state",
                    models.CharField(
                        choices=[("entered", "entered"), ("withdrawn", "withdrawn")], default="entered", max_length=12
                    ),
                ),
                ("entered_at", models.DateTimeField(auto_now_add=True)),
                (
                    "dog",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="entries", to="dogs.dog"
                    ),
                ),
                (
                    "show",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.CASCADE, related_name="entries", to="shows.show"
                    ),
                ),
                (
                    "show_class",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="entries", to="shows.showclass"
                    ),
                ),
            ],
            options={
                "verbose_name_plural": "entries",
            },
        ),
        migrations.CreateModel(
            name="EntryFile",
            fields=[
                ("id", models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name="ID")),
                ("name", models.CharField(max_length=200)),
                ("content", models.BinaryField(blank=True, default=bytes)),
                ("digest", models.CharField(max_length=64)),
                ("kind", models.CharField(max_length=8)),
                ("encoding", models.CharField(blank=True, max_length=20)),
                ("delimiter", models.CharField(blank=True, max_length=2)),
                ("sheet", models.CharField(blank=True, max_length=100)),
                ("other_sheets", models.JSONField(blank=True, default=list)),
                ("date_style", models.CharField(max_length=12)),
                ("date_certain", models.BooleanField(default=True)),
                ("heading_line", models.PositiveIntegerField(default=1)),
                ("headings", models.JSONField(default=list)),
                ("columns", models.JSONField(default=dict)),
                ("checked_for", models.CharField(blank=True, max_length=200)),
                ("uploaded_at", models.DateTimeField(auto_now_add=True)),
                (
                    "show",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.CASCADE, related_name="entry_files", to="shows.show"
                    ),
                ),
                (
                    "uploaded_by",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.SET_NULL,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
            ],
        ),
        migrations.CreateModel(
            name="EntryLine",
            fields=[
                ("id", models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name="ID")),
                ("line", models.PositiveIntegerField()),
                ("cells", models.JSONField(default=list)),
                ("mended", models.JSONField(blank=True, default=dict)),
                ("findings", models.JSONField(blank=True, default=list)),
                (
                    "standing",
                    models.CharField(
                        choices=[("good", "good"), ("warned", "good, with a warning"), ("refused", "to be mended")],
                        default="refused",
                        max_length=8,
                    ),
                ),
                (
                    "state",
                    models.CharField(
                        choices=[("waiting", "waiting"), ("taken", "taken"), ("aside", "set aside")],
                        default="waiting",
                        max_length=8,
                    ),
                ),
                (
                    "entry",
                    models.ForeignKey(
                        blank=True,
                        null=True,
                        on_delete=django.db.models.deletion.SET_NULL,
                        related_name="lines",
                        to="entries.entry",
                    ),
                ),
                (
                    "file",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.CASCADE, related_name="lines", to="entries.entryfile"
                    ),
                ),
            ],
        ),
        migrations.AddConstraint(
            model_name="entry",
            constraint=models.UniqueConstraint(fields=("show", "number"), name="catalogue_number_once"),
        ),
        migrations.AddConstraint(
            model_name="entry",
            constraint=models.UniqueConstraint(
                fields=("show_class", "dog"),
                name="dog_once_in_class",
                violation_error_message="This dog is in this class already.",
            ),
        ),
        migrations.AddConstraint(
            model_name="entryfile",
            constraint=models.UniqueConstraint(fields=("show", "digest"), name="file_once_in_show"),
        ),
        migrations.AddIndex(
            model_name="entryline",
            index=models.Index(fields=["file", "state", "standing", "line"], name="file_line_standing"),
        ),
        migrations.AddConstraint(
            model_name="entryline",
            constraint=models.UniqueConstraint(fields=("file", "line"), name="file_line_once"),
        ),
    ]
