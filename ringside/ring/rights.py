"""Which kind of field asks for which right at the ring."""

from scoring.sheet import field_kind

DOING_BY_KIND = {"presence": "mark-presence", "signature": "sign"}
# Only the judge decides grades, places and awards; the writer takes the judge's words.
DECIDES = frozenset({"grade", "reason", "shortlist", "places", "award"})


# The role of an edit that the office types in from the page that the judge signed: the page is the judge's word.
PAPER = "paper"
ON_PAPER = {
    "class": frozenset({"presence", "grade", "reason", "places", "signature"}),
    "breed": frozenset({"award", "signature"}),
}


def doing_for(field: str) -> str:
    """The entry of `shows.may.MAY` that a change of this field needs."""
    kind = field_kind(field)
    if kind in DECIDES:
        return "decide-class"
    return DOING_BY_KIND.get(kind, "write-sheets")
