"""A small real server that speaks the tablet's format, and does to order what networks do to answers."""

import json
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

from scoring.bad_input import BadInput
from scoring.merging import merge
from scoring.sheet import Edit, digest, parse_edit
from scoring.sheet_fields import check_edit

STATIC = Path(__file__).parents[2] / "static"
HERE = Path(__file__).parent
POLICY = "default-src 'none'; script-src 'self'; connect-src 'self'"
PAGE = b'<!doctype html><title>ring</title><script type="module" src="/wire.js"></script>'
PORTAL = b"<!doctype html><title>Welcome to our network</title><p>Accept the terms."


class RingServer(ThreadingHTTPServer):
    """`troubles` are used up one by one, by the requests for edits: each is a way for an exchange to go wrong."""

    daemon_threads = True

    def __init__(self) -> None:
        super().__init__(("127.0.0.1", 0), Handler)
        self.taken: dict[str, Edit] = {}
        self.order: list[str] = []
        self.troubles: list[str] = []
        self.batches: list[list[str]] = []
        self.token = "first"
        self.chokes_on = ""

    @property
    def address(self) -> str:
        return f"http://127.0.0.1:{self.server_address[1]}"

    def take(self, raw: dict[str, Any]) -> dict[str, str]:
        try:
            edit = parse_edit(raw)
            check_edit(edit)
        except BadInput as refusal:
            return {"id": raw["id"], "digest": digest(parse_edit(raw)), "state": "refused", "reason": refusal.message}
        if edit.id not in self.taken:
            self.taken[edit.id] = edit
            self.order.append(edit.id)
        return {"id": edit.id, "digest": digest(edit), "state": self.state(edit)}

    def state(self, edit: Edit) -> str:
        merged = merge(each for each in self.taken.values() if each.sheet == edit.sheet)
        if edit.id in merged.held:
            return "held"
        return "disputed" if edit.field in merged.disputed else "applied"

    def since(self, sequence: int) -> list[dict[str, Any]]:
        numbered = list(enumerate(self.order, start=1))[sequence:]
        return [{**self.taken[name].as_json(), "seq": number, "by": "judge"} for number, name in numbered]


class Handler(BaseHTTPRequestHandler):
    server: RingServer

    def log_message(self, *_: Any) -> None:
        pass

    def do_GET(self) -> None:
        path, _, query = self.path.partition("?since=")
        if path == "/edits":
            self.answer_edits([], int(query.partition("&")[0]))
        elif path == "/":
            self.reply(200, "text/html", PAGE)
        elif path == "/wire.js":
            self.reply(200, "text/javascript", (HERE / "wire.js").read_bytes())
        elif path.startswith("/static/ring/"):
            self.reply(200, "text/javascript", (STATIC / "ring" / Path(path).name).read_bytes())
        else:
            self.reply(404, "text/plain", b"")

    def do_POST(self) -> None:
        body = json.loads(self.rfile.read(int(self.headers["Content-Length"])))
        self.server.batches.append([edit["id"] for edit in body["edits"]])
        if self.headers["X-CSRFToken"] != self.server.token:
            self.reply(403, "text/html", b"<p>Forbidden")
        elif self.server.chokes_on in self.server.batches[-1]:
            self.reply(500, "text/html", b"<p>Server error")
        else:
            self.answer_edits(body["edits"], body["since"])

    def answer_edits(self, edits: list[dict[str, Any]], since: int) -> None:
        trouble = self.server.troubles.pop(0) if self.server.troubles else ""
        if trouble == "portal":
            return self.reply(200, "text/html", PORTAL)
        if trouble in ("401", "500"):
            return self.reply(int(trouble), "text/html", b"<p>Not now")
        if trouble == "redirect":
            return self.reply(302, "text/html", b"", Location="/")
        answers = [self.server.take(edit) for edit in edits]
        if trouble == "lost":
            return self.connection.close()
        if trouble == "other digest":
            answers = [{**answer, "digest": "0" * 64} for answer in answers]
        said = {"answers": answers, "edits": self.server.since(since), "sequence": len(self.server.order)}
        text = json.dumps(said).encode()
        return self.reply(200, "application/json", text[: len(text) // 2] if trouble == "half" else text)

    def reply(self, status: int, kind: str, body: bytes, **headers: str) -> None:
        self.send_response(status)
        self.send_header("Content-Type", f"{kind}; charset=utf-8")
        self.send_header("Content-Length", str(len(body)))
        self.send_header("Content-Security-Policy", POLICY)
        self.send_header("Set-Cookie", f"csrftoken={self.server.token}")
        for name, value in headers.items():
            self.send_header(name, value)
        self.end_headers()
        self.wfile.write(body)
