"""What audit lines can say: the codes that actions write, each said in the reader's language on the audit page.

A line keeps codes, never sentences; a code that is not listed here is said as it is written.
"""

from django.utils.translation import gettext, pgettext

CONTEXT = "audit"

# What was done.
DOINGS = (
    "add-fee", "add-ring", "adopt-sheets", "answer-correction-request", "appoint", "appoint-part", "ask-correction",
    "ask-for-entry", "attach-page", "cancel-awards", "change-entry-fee", "change-entry-terms", "change-fee",
    "change-ring", "change-show", "claim-entry", "copy-show", "correct-award", "correct-final", "correct-results",
    "decide-held-edit", "declare-tablet-lost", "delete-photo", "delete-proof", "drop-final", "end-pairing",
    "enter-by-hand", "enter-group", "enter-own-dog", "entry-accepted", "entry-added", "entry-back", "entry-moved",
    "entry-refused", "entry-withdrawn", "forget-contact", "forget-own-dog", "give-consent", "give-role", "hold-finals",
    "issue-invoice", "issue-invoices", "keep-own-dog", "let-read", "lines-aside", "lines-waiting", "make-pairing-code",
    "map-columns", "mark-photo", "mark-presence", "mend-line", "name-final-judge", "name-handler", "notices-sent",
    "number-entries", "pair-tablet", "plan-times", "print-critiques", "publish awards", "publish class",
    "publish critiques", "publish-final", "put-entry-aside", "put-in-group", "read-entry-file", "read-entry-file-again",
    "record-final", "record-payment", "remove-fee", "remove-ring", "replace-judge", "send-letters", "send-notices",
    "send-proof", "set-fee-member", "set-fee-terms", "share-critique", "share-photo", "start-show", "strike-payment",
    "take-appointment-away", "take-back-reading", "take-back-request", "take-entries", "take-handover-file",
    "take-role", "take-show-in", "take-show-out", "throw-away-entry-file", "tick-proof", "type-awards", "type-class",
    "undo-entry-fee", "untick-proof", "withdraw-consent", "withdraw-group", "withdraw-own-dog", "withdraw-photo",
    "withdraw-share", "write-report",
)  # fmt: skip

# What it was done to, as in "entry:12"; and what a line's details are called.
THINGS = (
    "breed", "class", "dog", "entry", "fee", "file", "final", "group", "invoice", "line", "pairing", "payment",
    "people", "person", "photo", "report", "request", "ring", "role", "show", "tablet",
)  # fmt: skip
DETAILS = (
    "added", "amount", "appointments", "award", "awards", "before", "change", "classes", "code", "columns",
    "corrections", "count", "critiques", "day", "edit", "edits", "entered_on", "entries", "failed", "fields", "groups",
    "kind", "landmarks", "language", "lines", "member", "need", "new_person", "number", "page", "person", "presence",
    "sent", "sex", "signed", "state", "total", "vaccination", "why",
)  # fmt: skip

# Details whose values are codes too, and those codes; the rest is said as it was typed.
CODED = frozenset({"kind", "presence", "state"})
VALUES = (
    "absent", "assistant", "book", "catalogue-address", "critique-link", "critiques-public", "critiques-reader",
    "excused", "judge", "left-out", "owner", "photo-link", "present", "secretary", "steward", "taken", "writer", "yes",
    "no", "zip",
)  # fmt: skip


def words() -> list[str]:
    """Everything here in English, as it is translated."""
    return sorted({_plain(code) for code in (*DOINGS, *THINGS, *DETAILS, *VALUES)})


def said(code: str) -> str:
    """A code in words; empty stays empty."""
    return pgettext(CONTEXT, _plain(code)) if code else ""


def about_said(about: str) -> str:
    """ "entry:12" as "entry 12", "file:3 line:7" as "file 3, line 7"."""
    pairs = [part.partition(":") for part in about.split(" ") if part]
    return ", ".join(f"{said(kind)} {key}".strip() for kind, _, key in pairs)


def value_said(name: str, value: object) -> str:
    """A detail's value: lists with commas, yes and no, and codes in words."""
    if isinstance(value, bool):
        return said("yes" if value else "no")
    if isinstance(value, list):
        return ", ".join(map(str, value))
    if name == "sex" and value:
        return gettext(str(value))
    return said(str(value)) if name in CODED else str(value)


def _plain(code: str) -> str:
    return code.replace("-", " ").replace("_", " ")
