from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [("shows", "0001_shows_and_classes")]

    operations = [
        migrations.AddField("show", "entries_open", models.DateField(blank=True, null=True)),
        migrations.AddField("show", "entries_close", models.DateField(blank=True, null=True)),
    ]
