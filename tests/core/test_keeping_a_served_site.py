"""Backup and restore with a deployment's own commands, while its server answers: the photo is there afterwards."""

import http.cookiejar
import json
import os
import re
import shutil
import urllib.request
import uuid
from pathlib import Path

import pytest

from tests.photos.pictures import picture
from tests.photos.sending import told
from tests.served import Site, served, unprepared


class Exhibitor:
    """The demo's exhibitor in a browser without pages."""

    def __init__(self, site: Site) -> None:
        self.site, self.cookies = site, http.cookiejar.CookieJar()
        self.opener = urllib.request.build_opener(urllib.request.HTTPCookieProcessor(self.cookies))
        self.get("/")
        self.post("/demo/exhibitor/", b"")

    def get(self, path: str) -> bytes:
        with self.opener.open(self.site.address + path, timeout=60) as answer:
            content: bytes = answer.read()
        return content

    def post(self, path: str, body: bytes, kind: str = "application/x-www-form-urlencoded") -> bytes:
        token = next(cookie.value for cookie in self.cookies if cookie.name == "csrftoken")
        headers = {"X-CSRFToken": token or "", "Content-Type": kind, "Referer": self.site.address}
        asked = urllib.request.Request(self.site.address + path, body, headers)
        with self.opener.open(asked, timeout=60) as answer:
            content: bytes = answer.read()
        return content

    def dog(self) -> int:
        found = re.search(rb"/my-dogs/(\d+)/", self.get("/my-dogs/"))
        assert found
        return int(found.group(1))

    def send_photo(self) -> str:
        name = str(uuid.uuid4())
        parts = [b'--cut\r\nContent-Disposition: form-data; name="told"\r\n\r\n' + json.dumps(told()).encode()]
        head = b'Content-Disposition: form-data; name="photo"; filename="a.jpg"\r\nContent-Type: image/jpeg\r\n\r\n'
        parts.append(b"--cut\r\n" + head + picture(size=(1250, 800)))
        body = b"\r\n".join(parts) + b"\r\n--cut--\r\n"
        self.post(f"/photos/dogs/{self.dog()}/send/{name}/", body, "multipart/form-data; boundary=cut")
        return name


@pytest.mark.both_databases
def test_what_was_sent_before_the_backup_is_served_after_the_restore(tmp_path):
    server = os.environ.get("DATABASE_URL")
    if server and shutil.which("pg_dump") is None:
        pytest.skip("no pg_dump here")
    first, second = tmp_path / "first", tmp_path / "second"
    first.mkdir()
    second.mkdir()
    with served(first, server) as site:
        exhibitor = Exhibitor(site)
        name = exhibitor.send_photo()
        shown = exhibitor.get(f"/photos/{name}/picture/")
        assert "holds the whole database and all kept files" in site.manage("backup", str(tmp_path / "copy.zip"))
        later = exhibitor.send_photo()
    with unprepared(second, server) as other:
        assert "back in place with" in other.manage("restore", str(tmp_path / "copy.zip"))
        other.manage("prepare")
        other.start()
        assert Exhibitor(other).get(f"/photos/{name}/picture/") == shown
    kept = {path.stem for path in Path(second, "media", "photos").iterdir()}
    assert name in kept
    assert later not in kept
