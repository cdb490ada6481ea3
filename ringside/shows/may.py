"""Who may do what in a show: the one table from which checks, pages and tests are made."""

from ringside.shows.models import Role

OWNER, SECRETARY, ASSISTANT = Role.Kind.OWNER, Role.Kind.SECRETARY, Role.Kind.ASSISTANT
STEWARD, WRITER, JUDGE = Role.Kind.STEWARD, Role.Kind.WRITER, Role.Kind.JUDGE

# doing: (what it is called in a sentence, the roles that may)
MAY: dict[str, tuple[str, frozenset[str]]] = {
    "see-office": ("see the office", frozenset({OWNER, SECRETARY, ASSISTANT})),
    "change-show": ("change the show", frozenset({OWNER, SECRETARY})),
    "take-entries": ("take entries", frozenset({OWNER, SECRETARY, ASSISTANT})),
    "number-entries": ("give catalogue numbers", frozenset({OWNER, SECRETARY})),
    "change-entries": ("move, withdraw or add entries on the day", frozenset({OWNER, SECRETARY})),
    "write-reports": ("write protests and incidents down", frozenset({OWNER, SECRETARY, ASSISTANT})),
    "read-reports": ("read protests and incidents", frozenset({OWNER, SECRETARY})),
    "correct-results": ("correct published results", frozenset({OWNER, SECRETARY})),
    "read-audit": ("read who changed what", frozenset({OWNER, SECRETARY})),
    "publish-results": ("publish results", frozenset({OWNER, SECRETARY})),
    "pair-tablets": ("pair tablets with a ring", frozenset({OWNER, SECRETARY})),
    "take-held-edits": ("take held edits in", frozenset({OWNER, SECRETARY})),
    "see-ring": ("work at the ring", frozenset({JUDGE, STEWARD, WRITER, OWNER, SECRETARY})),
    "write-sheets": ("write on judge's sheets", frozenset({JUDGE, WRITER})),
    "decide-class": ("decide grades and places", frozenset({JUDGE, WRITER})),
    "mark-presence": ("mark who is present", frozenset({JUDGE, STEWARD, WRITER, OWNER, SECRETARY})),
    "sign": ("sign", frozenset({JUDGE})),
}


def may(kinds: frozenset[str], doing: str) -> bool:
    """Whether somebody with these roles may do it."""
    return bool(kinds & MAY[doing][1])
