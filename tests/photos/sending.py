"""How tests send a photo as a device does."""

import json
import uuid
from typing import Any

from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client

from ringside.dogs.models import Dog
from ringside.people.models import Account
from ringside.photos.models import Photo
from tests.measuring.dogs import GROUND, STANDING
from tests.photos.pictures import picture

WIDTH, HEIGHT = 1250, 800
LANDMARKS = {name: [x / 2, y / 2] for name, (x, y) in STANDING.items()}
LEVEL = [[x / 2, y / 2] for x, y in GROUND]


def signed_in(account: Account | None) -> Client:
    client = Client()
    if account is not None:
        client.force_login(account)
    return client


def told(**more: Any) -> dict[str, Any]:
    plain = {"view": "standing-side", "image": [WIDTH, HEIGHT], "landmarks": LANDMARKS, "ground": LEVEL}
    return {**plain, "taken_on": "2026-05-02", **more}


def send(client: Client, dog: Dog, public_id: uuid.UUID, words: Any, content: bytes | None = None):
    data: dict[str, Any] = {"told": json.dumps(words)}
    if content is not None:
        data["photo"] = SimpleUploadedFile("../../evil.php", content, "text/html")
    address = f"/photos/dogs/{dog.pk}/send/{public_id}/"
    return client.post(address, data, headers={"Accept": "application/json"})


def kept_photo(owner: Account, dog: Dog, **more: Any) -> Photo:
    public_id = uuid.uuid4()
    answer = send(signed_in(owner), dog, public_id, told(**more), picture(size=(WIDTH, HEIGHT)))
    assert answer.status_code == 200, answer.content
    return Photo.objects.get(public_id=public_id)
