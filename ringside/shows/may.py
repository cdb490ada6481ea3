"""Who may do what in a show: the one table from which checks, pages and tests are made."""

from django.utils.translation import gettext
from django.utils.translation import gettext_noop as _

from ringside.shows.models import Role

OWNER, SECRETARY, ASSISTANT = Role.Kind.OWNER, Role.Kind.SECRETARY, Role.Kind.ASSISTANT
STEWARD, WRITER, JUDGE = Role.Kind.STEWARD, Role.Kind.WRITER, Role.Kind.JUDGE

# doing: (what it is called in a sentence, the roles that may)
MAY: dict[str, tuple[str, frozenset[str]]] = {
    "see-office": (_("see the office"), frozenset({OWNER, SECRETARY, ASSISTANT})),
    "change-show": (_("change the show"), frozenset({OWNER, SECRETARY})),
    "take-show-out": (_("take the whole show out as a file"), frozenset({OWNER})),
    "take-entries": (_("take entries"), frozenset({OWNER, SECRETARY, ASSISTANT})),
    "decide-entries": (_("decide on late and doubtful entries"), frozenset({OWNER, SECRETARY})),
    "tick-proofs": (_("look at proofs and tick them off"), frozenset({OWNER, SECRETARY, ASSISTANT})),
    "set-fees": (_("set fees and the account they are paid into"), frozenset({OWNER, SECRETARY})),
    "see-fees": (_("see what exhibitors owe and have paid"), frozenset({OWNER, SECRETARY, ASSISTANT})),
    "keep-payments": (_("record payments, refunds and fees that differ"), frozenset({OWNER, SECRETARY})),
    "number-entries": (_("give catalogue numbers"), frozenset({OWNER, SECRETARY})),
    "send-notices": (_("write to the exhibitors"), frozenset({OWNER, SECRETARY})),
    "change-entries": (_("move, withdraw or add entries on the day"), frozenset({OWNER, SECRETARY})),
    "write-reports": (_("write protests and incidents down"), frozenset({OWNER, SECRETARY, ASSISTANT})),
    "read-reports": (_("read protests and incidents"), frozenset({OWNER, SECRETARY})),
    "type-classes": (_("type in classes judged on paper"), frozenset({OWNER, SECRETARY, ASSISTANT})),
    "record-finals": (_("record what the judges of the finals decide"), frozenset({OWNER, SECRETARY, ASSISTANT})),
    "correct-results": (_("correct published results"), frozenset({OWNER, SECRETARY})),
    "read-audit": (_("read who changed what"), frozenset({OWNER, SECRETARY})),
    "publish-results": (_("publish results"), frozenset({OWNER, SECRETARY})),
    "pair-tablets": (_("pair tablets with a ring"), frozenset({OWNER, SECRETARY})),
    "take-held-edits": (_("take held edits in"), frozenset({OWNER, SECRETARY})),
    "decide-held-edits": (_("decide on held edits of a ring"), frozenset({JUDGE, OWNER, SECRETARY})),
    "see-ring": (_("work at the ring"), frozenset({JUDGE, STEWARD, WRITER, OWNER, SECRETARY})),
    "write-sheets": (_("write on judge's sheets"), frozenset({JUDGE, WRITER})),
    "decide-class": (_("decide grades and places"), frozenset({JUDGE, WRITER})),
    "mark-presence": (_("mark who is present"), frozenset({JUDGE, STEWARD, WRITER, OWNER, SECRETARY})),
    "take-photos": (_("take photos in the ring"), frozenset({JUDGE, STEWARD, WRITER})),
    "sign": (_("sign"), frozenset({JUDGE})),
}


def doing_words(doing: str) -> str:
    """What it is called, in the reader's language: "change the show"."""
    return gettext(MAY[doing][0])


def may(kinds: frozenset[str], doing: str) -> bool:
    """Whether somebody with these roles may do it."""
    return bool(kinds & MAY[doing][1])
