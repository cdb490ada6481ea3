"""A tablet reduced to its promises, speaking with a served site over HTTP: what it sets, holds, sends and is told."""

import http.client
import http.cookiejar
import json
import random
import urllib.error
import urllib.request
from datetime import UTC, datetime
from typing import Any

from scoring.merging import Merged, merge, replaces_for
from scoring.sheet import Edit, digest, read_edit

MADE_AT = datetime(2026, 6, 13, 9, 0, tzinfo=UTC).isoformat()
ANSWERED = {"applied", "disputed", "held", "refused"}


class Lost(Exception):
    """No answer came: the network or the server was gone, or the answer was lost on the way."""


class Tablet:
    """`known`: all edits it has seen; `unsent`: its own without an answer; `promised`: its own that were answered,
    `refused` those among them that were refused; `left_out`: those of all tablets that do not count."""

    def __init__(self, address: str, ring: int, name: str, seed: int) -> None:
        self.address, self.ring, self.name = address, ring, name
        self.random = random.Random(seed)
        self.known: dict[str, Edit] = {}
        self.unsent: dict[str, Edit] = {}
        self.promised: set[str] = set()
        self.refused: set[str] = set()
        self.left_out: set[str] = set()
        self.since, self.made = 0, 0
        self.cookies = http.cookiejar.CookieJar()
        self.opener = urllib.request.build_opener(urllib.request.HTTPCookieProcessor(self.cookies))

    def enter(self) -> None:
        """Goes in by the demo's door for the judge."""
        self._ask("/")
        self._ask("/demo/judge/", data=b"")

    def day(self) -> dict[str, Any]:
        day: dict[str, Any] = json.loads(self._ask(f"/ring/{self.ring}/day/"))
        return day

    def set(self, sheet: str, field: str, value: Any) -> None:
        self.made += 1
        edits = [edit for edit in self.known.values() if edit.sheet == sheet and edit.id not in self.left_out]
        replaces = replaces_for(edits, field, self.unsent)
        edit = Edit(1, f"{self.name}-{self.made}", sheet, field, value, replaces, MADE_AT, self.name)
        self.known[edit.id] = self.unsent[edit.id] = edit

    def send(self, *, lose_request: bool = False, lose_answer: bool = False) -> None:
        """Sends some of what it holds, in any order, with some of what it had sent already. Raises Lost."""
        if lose_request:
            raise Lost
        batch = self.random.sample(list(self.unsent.values()), k=self.random.randint(0, min(20, len(self.unsent))))
        batch += self.random.sample([self.known[key] for key in sorted(self.promised)], k=min(2, len(self.promised)))
        answer = self._exchange(batch)
        if lose_answer:
            raise Lost
        self._take(answer)

    def send_newest(self) -> None:
        """Sends the last edit it made. Raises Lost."""
        self._take(self._exchange(list(self.unsent.values())[-1:]))

    def look(self, path: str) -> None:
        self._ask(path)

    def send_all(self) -> None:
        """Until nothing of its own waits and nothing new comes."""
        while True:
            before = self.since
            self.send()
            if not self.unsent and self.since == before:
                return

    def _exchange(self, batch: list[Edit]) -> dict[str, Any]:
        body = json.dumps({"edits": [edit.as_json() for edit in batch], "since": self.since, "device": self.name})
        answer: dict[str, Any] = json.loads(
            self._ask(f"/ring/{self.ring}/edits/", data=body.encode(), kind="application/json")
        )
        return answer

    def _take(self, answer: dict[str, Any]) -> None:
        for one in answer["answers"]:
            mine = self.known.get(one["id"])
            if mine and one["digest"] == digest(mine) and one["state"] in ANSWERED:
                self.unsent.pop(one["id"], None)
                self.promised.add(one["id"])
                self.refused |= {one["id"]} if one["state"] == "refused" else set()
        for raw in answer["edits"]:
            self.known.setdefault(raw["id"], read_edit(raw))
            (self.left_out.discard if raw["state"] == "taken" else self.left_out.add)(raw["id"])
        self.since = max(self.since, answer["sequence"])

    def merged(self, sheet: str) -> Merged:
        return merge((edit for edit in self.known.values() if edit.sheet == sheet), self.left_out)

    def decide(self, edit_id: str, counts: str) -> None:
        """The judge's word on an edit that the server holds."""
        self._ask(f"/ring/{self.ring}/held/{edit_id}/", data=f"counts={counts}".encode())

    def _ask(self, path: str, data: bytes | None = None, kind: str = "application/x-www-form-urlencoded") -> bytes:
        headers = {"Content-Type": kind, "X-CSRFToken": self._token(), "Accept": "application/json"}
        request = urllib.request.Request(self.address + path, data=data, headers=headers)
        try:
            with self.opener.open(request, timeout=20) as response:
                content: bytes = response.read()
                return content
        except urllib.error.HTTPError as error:
            if error.code < 500:
                raise
            raise Lost from error
        except (urllib.error.URLError, http.client.HTTPException, OSError) as error:
            raise Lost from error

    def _token(self) -> str:
        return next((cookie.value or "" for cookie in self.cookies if cookie.name == "csrftoken"), "")
