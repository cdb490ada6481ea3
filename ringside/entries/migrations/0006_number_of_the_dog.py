"""A catalogue number is the dog's, in all its classes. Numbers given before stay as they are: they are printed."""

from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [
        ("entries", "0005_readers"),
    ]

    operations = [
        migrations.RemoveConstraint(
            model_name="entry",
            name="catalogue_number_once",
        ),
        migrations.AddIndex(
            model_name="entry",
            index=models.Index(fields=["show", "number"], name="entry_by_number"),
        ),
    ]
