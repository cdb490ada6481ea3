from django.db import migrations, models

import ringside.people.models


class Migration(migrations.Migration):
    dependencies = [("papers", "0001_runs")]

    operations = [
        migrations.AlterField(
            model_name="paperrun",
            name="language",
            field=models.CharField(choices=ringside.people.models.languages, max_length=2),
        ),
    ]
