from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [("people", "0001_accounts_and_people")]

    operations = [
        migrations.AddField(
            model_name="account",
            name="language",
            field=models.CharField(
                blank=True,
                choices=[("en", "English"), ("fr", "français"), ("de", "Deutsch"), ("es", "español")],
                max_length=2,
            ),
        ),
    ]
