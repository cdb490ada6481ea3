from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [
        ("entries", "0004_handler"),
    ]

    operations = [
        migrations.AlterField(
            model_name="consent",
            name="what",
            field=models.CharField(
                choices=[
                    ("catalogue-address", "address in the catalogue"),
                    ("critique-link", "critique shared by a link"),
                    ("photo-link", "photo shared by a link"),
                    ("critiques-public", "critiques open to everybody"),
                    ("critiques-reader", "critiques open to somebody named"),
                ],
                max_length=20,
            ),
        ),
    ]
