import django.db.models.deletion
from django.db import migrations, models

# The words of what was agreed to before were not kept: `entries.consents.wording.UNKNOWN`.
BEFORE = {"wording": 0, "way": "before"}


def owner_who_shared(apps, dog_id, account_id):
    """The owner whose account made the link; without that, the only owner who has an account, else nobody."""
    owners = apps.get_model("people", "Person").objects.filter(ownership__dog=dog_id, account__isnull=False)
    found = list(owners.order_by("id"))
    own = [one for one in found if one.account_id == account_id]
    return next(iter(own or (found if len(found) == 1 else [])), None)


def keep_consents(apps, schema_editor):
    """Every link that an owner has made becomes a consent. When a photo was shared was not kept, so it stays empty."""
    Consent = apps.get_model("entries", "Consent")
    for share in apps.get_model("home", "Share").objects.filter(consent=None).select_related("entry"):
        person = owner_who_shared(apps, share.entry.dog_id, share.made_by_id)
        if person:
            share.consent = Consent.objects.create(
                person=person, what="critique-link", show_id=share.entry.show_id, dog_id=share.entry.dog_id,
                given_at=share.made_at, withdrawn_at=share.withdrawn_at,
                withdrawn_way="before" if share.withdrawn_at else "", **BEFORE,
            )  # fmt: skip
            share.save(update_fields=["consent"])
    photos = apps.get_model("photos", "Photo").objects.filter(consent=None, share_token__isnull=False)
    for photo in photos.select_related("entry"):
        person = owner_who_shared(apps, photo.dog_id, photo.uploaded_by_id)
        if person:
            show_id = photo.entry.show_id if photo.entry else None
            photo.consent = Consent.objects.create(
                person=person, what="photo-link", show_id=show_id, dog_id=photo.dog_id, **BEFORE
            )  # fmt: skip
            photo.save(update_fields=["consent"])


class Migration(migrations.Migration):
    dependencies = [
        ("entries", "0003_consents"),
        ("home", "0001_sharing_requests_and_claims"),
        ("people", "0003_languages_by_files"),
        ("photos", "0003_consents"),
    ]

    operations = [
        migrations.AddField(
            model_name="share",
            name="consent",
            field=models.ForeignKey(
                blank=True,
                null=True,
                on_delete=django.db.models.deletion.SET_NULL,
                related_name="shares",
                to="entries.consent",
            ),
        ),
        migrations.RunPython(keep_consents, migrations.RunPython.noop),
    ]
