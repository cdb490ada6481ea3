from django.db import migrations, models

import ringside.people.models


class Migration(migrations.Migration):
    dependencies = [("people", "0002_language")]

    operations = [
        migrations.AlterField(
            model_name="account",
            name="language",
            field=models.CharField(blank=True, choices=ringside.people.models.languages, max_length=2),
        ),
    ]
