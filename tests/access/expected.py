"""Who is let in where: one line for every address of the site, by its name.

To add an address, add a line here: its name in the URL table, then `get` or `post` with who may. That is an entry of
`ringside.shows.may.MAY` ("see-office") or one of the rules below. A part of the address that the fixture does not
know (tests/access/places.py) is given by name. Then write a test of what the address does; this table only says who
is let in.
"""

from dataclasses import dataclass, field
from typing import Any

from ringside.shows.may import MAY

# In the show: its roles. Outside: somebody who owns an entered dog, somebody signed in, nobody signed in.
IN_THE_SHOW = ("owner", "secretary", "assistant", "steward", "writer", "judge")
OUTSIDE = ("exhibitor", "stranger", "nobody")
OFFICE = ("owner", "secretary", "assistant")

EVERYBODY = "everybody"
ACCOUNT = "signing in and out itself"
SIGNED_IN = "whoever is signed in"
RUNS_SITE = "whoever runs the site"
OWN_CRITIQUE = "the dog's owner, and the office of that show"
DOGS_READERS = "the dog's owner, the office of a show where it is entered, its judge once the breed is finished"
DOGS_OWNER = "the dog's owner"
LET_READ = "somebody whom the dog's owner lets read its critiques, there and nowhere else"

# What a person gets who is not let in, and who is let in, for the rules that are not of a show.
LET_IN: dict[str, tuple[frozenset[str], str]] = {
    EVERYBODY: (frozenset({*IN_THE_SHOW, *OUTSIDE}), ""),
    SIGNED_IN: (frozenset({*IN_THE_SHOW, *OUTSIDE} - {"nobody"}), ""),
    RUNS_SITE: (frozenset(), "refused"),
    OWN_CRITIQUE: (frozenset({*OFFICE, "exhibitor"}), "not found"),
    DOGS_READERS: (frozenset({*OFFICE, "exhibitor"}), "not found"),
    DOGS_OWNER: (frozenset({"exhibitor"}), "not found"),
    # The fixture's stranger is let read.
    LET_READ: (frozenset({"stranger"}), "not found"),
}


@dataclass(frozen=True)
class Expected:
    rule: str
    method: str = "get"
    parts: dict[str, Any] = field(default_factory=dict)
    sends: tuple[str, ...] = ()


def get(rule: str, **parts: Any) -> Expected:
    return Expected(rule, "get", parts)


def post(rule: str, *sends: str, **parts: Any) -> Expected:
    """`sends` names fields without which the address finds nothing: the fixture's values of these names are sent."""
    return Expected(rule, "post", parts, sends)


def verdict(rule: str, who: str) -> str:
    """allowed, refused, not found, or sign in."""
    if rule in LET_IN:
        let_in, otherwise = LET_IN[rule]
        return "allowed" if who in let_in else "sign in" if who == "nobody" else otherwise
    if who in OUTSIDE:
        return "sign in" if who == "nobody" else "not found"
    return "allowed" if who in MAY[rule][1] else "refused"


EXPECTED: dict[str, Expected] = {
    "home:front": get(EVERYBODY),
    "home:mine": get(SIGNED_IN),
    "home:kept": get(SIGNED_IN),
    "home:kept-file": get(SIGNED_IN),
    "home:forget": post(SIGNED_IN),
    "home:withdraw-consent": post(DOGS_OWNER),
    "home:let-read": post(DOGS_OWNER),
    "home:take-back-reading": post(DOGS_OWNER),
    "home:reading": get(LET_READ),
    "home:reading-pdf": get(LET_READ),
    "home:critique": get(OWN_CRITIQUE),
    "home:dog": get(DOGS_OWNER),
    "home:ask": get(DOGS_OWNER),
    "home:share": post(DOGS_OWNER),
    "home:withdraw-share": post(DOGS_OWNER),
    "home:shared": get(EVERYBODY),
    "home:check": get(EVERYBODY),
    "home:results": get(EVERYBODY),
    "home:claim": get(EVERYBODY),
    "home:claim-finish": get(SIGNED_IN),
    "home:requests": get("see-office"),
    "home:answer": post("correct-results", "answer"),
    "home:show-in": get(RUNS_SITE),
    "home:show-out": get("take-show-out"),
    "home:number-cards": post("number-entries"),
    "account_request_login_code": get(ACCOUNT),
    "account_confirm_login_code": get(ACCOUNT),
    "account_logout": get(ACCOUNT),
    "account_login": get(ACCOUNT),
    "account_signup": get(ACCOUNT),
    "language": post(EVERYBODY),
    "shows:office": get(SIGNED_IN),
    "shows:new": get(RUNS_SITE),
    "shows:show": get("see-office"),
    "shows:details": get("change-show"),
    "shows:who-may": get("see-office"),
    "shows:audit": get("read-audit"),
    "shows:appoint": post("change-show"),
    "shows:breed": get("change-show"),
    "shows:appoint-whole": post("change-show"),
    "shows:take-away": post("change-show"),
    "shows:classes": get("change-show"),
    "shows:copy": get("change-show"),
    "shows:replace-judge": get("change-show"),
    "shows:give-role": post("change-show"),
    "shows:take-role": post("change-show"),
    "entries:list": get("see-office"),
    "entries:new": get("take-entries"),
    "entries:number": post("number-entries"),
    "entries:export": get("see-office", kind="csv"),
    "entries:entry": get("see-office"),
    "entries:handler": post("take-entries"),
    "entries:tick": post("tick-proofs"),
    "entries:record-consent": post("take-entries"),
    "entries:end-consent": post("take-entries"),
    "entries:terms": get("change-show"),
    "entries:groups": get("take-entries"),
    "entries:withdraw-group": post("take-entries"),
    "entries:waiting": get("see-office"),
    "entries:decide": post("decide-entries", "reason"),
    "entries:upload": post("take-entries"),
    "entries:file": get("take-entries"),
    "entries:columns": post("take-entries"),
    "entries:again": post("take-entries"),
    "entries:lines": post("take-entries"),
    "entries:line": get("take-entries"),
    "entries:throw-away": post("take-entries"),
    "fees:list": get("see-fees"),
    "fees:export": get("see-fees", kind="csv"),
    "fees:set-up": get("set-fees"),
    "fees:new-line": get("set-fees"),
    "fees:line": get("set-fees"),
    "fees:remove-line": post("set-fees"),
    "fees:account": get("see-fees"),
    "fees:member": post("keep-payments"),
    "fees:invoice": post("keep-payments"),
    "fees:missing-invoices": post("keep-payments"),
    "fees:strike": post("keep-payments"),
    "fees:change": get("keep-payments"),
    "papers:invoice": get(OWN_CRITIQUE),
    "home:owed": get(SIGNED_IN),
    "enter:shows": get(EVERYBODY),
    "enter:show": get(EVERYBODY),
    "enter:address": post(EVERYBODY, "email"),
    "enter:dogs": get(SIGNED_IN),
    "enter:new-dog": get(SIGNED_IN),
    "enter:dog": get(DOGS_OWNER),
    "enter:facts": get(DOGS_OWNER),
    "enter:withdraw": post(DOGS_OWNER),
    "enter:forget-dog": post(DOGS_OWNER),
    "enter:send-proof": post(DOGS_OWNER),
    "enter:delete-proof": post(DOGS_OWNER),
    "enter:proof": get(OWN_CRITIQUE),
    "enter:catalogue-address": get(SIGNED_IN),
    "enter:groups": get(SIGNED_IN),
    "enter:withdraw-group": post(DOGS_OWNER),
    "enter:take-back": post(DOGS_OWNER),
    "timetable:times": get("see-office"),
    "timetable:days": get("see-office"),
    "timetable:change-ring": post("change-show"),
    "timetable:remove-ring": post("change-show"),
    "notices:desk": get("see-office"),
    "notices:send": post("send-notices"),
    "notices:advance": post("send-notices"),
    "results:desk": get("see-office"),
    "results:awards": get("see-office"),
    "results:breed-awards": get("see-office"),
    "results:publish-awards": post("publish-results"),
    "results:correct-award": get("correct-results"),
    "results:cancel-awards": get("correct-results"),
    "results:paper-awards": get("type-classes"),
    "results:paper-awards-page": get("type-classes"),
    "results:missing": get("see-office"),
    "results:points": get("see-office"),
    "results:finals": get("see-office"),
    "results:hold-finals": post("change-show"),
    "results:groups": get("see-office"),
    "results:put-in-group": post("change-show", "group"),
    "results:final": get("see-office"),
    "results:final-judge": post("change-show"),
    "results:drop-final": post("change-show"),
    "results:publish-final": post("publish-results"),
    "results:correct-final": get("correct-results"),
    "results:day": get("see-office"),
    "results:add-at-ring": get("change-entries"),
    "results:reports": get("write-reports"),
    "results:day-class": get("see-office"),
    "results:paper": get("type-classes"),
    "results:paper-page": get("type-classes"),
    "results:presence": post("mark-presence"),
    "results:move": post("change-entries"),
    "results:withdraw": post("change-entries"),
    "results:take-back-withdrawal": post("change-entries"),
    "results:out-results": get("see-office", kind="json"),
    "results:out-awards": get("see-office", kind="csv"),
    "results:out-entries": get("take-entries"),
    "results:out-schedule": get("see-office"),
    "results:out-schema": get("see-office", name="results"),
    "results:correct": get("correct-results"),
    "results:class": get("see-office"),
    "results:publish": post("publish-results"),
    "results:letters": post("publish-results"),
    "results:publish-critiques": post("publish-results"),
    "ring-office:rings": get("see-office"),
    "ring-office:make-code": post("pair-tablets", "ring", "kind"),
    "ring-office:end-pairing": post("pair-tablets"),
    "ring-office:declare-lost": post("take-held-edits"),
    "ring-office:take-file": post("take-held-edits", "ring"),
    "ring-office:decide": post("take-held-edits"),
    "ring:pair": get(EVERYBODY),
    "ring:pair-code": get(EVERYBODY, code="ABCD"),
    "ring:shell": get(EVERYBODY),
    "ring:worker": get(EVERYBODY),
    "ring:phrases": get(EVERYBODY, breed="boxer", language="de"),
    "ring:names": get(EVERYBODY, language="de"),
    "ring:page": get("see-ring"),
    "ring:board": get(EVERYBODY),
    "ring:day": get("see-ring"),
    "ring:edits": get("see-ring"),
    "ring:decide-held": post("decide-held-edits"),
    "ring:candidates": get("see-ring"),
    "ring:advice": get("see-ring"),
    "papers:critique": get(OWN_CRITIQUE),
    "papers:desk": get("see-office"),
    "papers:start-run": post("see-office"),
    "papers:run": get("see-office"),
    "papers:advance-run": post("see-office"),
    "papers:run-file": get("see-office"),
    "papers:printed": get("see-office", code="catalogue"),
    "papers:award-cards": get("see-office"),
    "papers:notice-letters": get("see-office"),
    "papers:results": get("see-office"),
    "photos:of-show": get("see-office"),
    "photos:dog": get(DOGS_READERS),
    "photos:over-time": get(DOGS_READERS),
    "photos:mark": get(DOGS_OWNER),
    "photos:send": post(DOGS_OWNER),
    "photos:reading": get(DOGS_READERS),
    "photos:picture": get(DOGS_READERS),
    "photos:delete": post(DOGS_OWNER),
    "photos:share": post(DOGS_OWNER),
    "photos:withdraw": post(DOGS_OWNER),
    "photos:shared": get(EVERYBODY),
    "photos:shared-picture": get(EVERYBODY),
    "ring-photos:shell": get(EVERYBODY),
    "ring-photos:mark": get("take-photos"),
    "ring-photos:readings": get("take-photos"),
    "ring-photos:send": post("take-photos"),
    "ring-photos:reading": get("take-photos"),
    "ring-photos:picture": get("take-photos"),
    "ring-photos:delete": post("take-photos"),
    "photos:breeds": get(EVERYBODY),
    "photos:lesson": get(EVERYBODY, breed="boxer"),
    "photos:lesson-point": get(EVERYBODY, breed="boxer", point="croup"),
    "demo:portrait": get(EVERYBODY),
}
# Answers that no table of rights decides: the one-click doors sign somebody in, in the demo only.
LEFT_OUT = frozenset({"demo:enter"})
