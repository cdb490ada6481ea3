"""Writes at the ring as the judge's tablet does."""

from ringside.ring import actions as ring
from ringside.ring.access import Worker
from ringside.ring.models import Edit
from scoring.merging import covers_for
from tests.shows_for_tests import SmallShow


class Pen:
    def __init__(self, at: SmallShow) -> None:
        self.at, self.count = at, Edit.objects.count()

    def write(self, sheet: str, fields: dict) -> None:
        edits = [self._edit(sheet, field, value) for field, value in fields.items()]
        worker = Worker(self.at.ring, frozenset({"judge"}), self.at.accounts["judge"])
        answers = ring.take_edits(worker=worker, raw_edits=edits)
        assert {answer.state for answer in answers} == {"applied"}, answers

    def sign(self, sheet: str) -> None:
        self.write(sheet, {"signature": {"covers": list(covers_for(ring.edits_of(sheet)))}})

    def _edit(self, sheet, field, value):
        self.count += 1
        return {
            "v": 1, "id": f"hand-{self.count}", "sheet": sheet, "field": field, "value": value,
            "replaces": [edit.id for edit in ring.edits_of(sheet) if edit.field == field],
            "made_at": "2026-06-13T09:00:00Z", "device": "hand",
        }  # fmt: skip


def judge_and_sign(at: SmallShow) -> None:
    """All three dogs graded, the first two placed, the card signed; nothing published."""
    pen, card = Pen(at), f"class:{at.show_class.pk}"
    first, second, third = (entry.pk for entry in at.entries)
    grades = {f"grade.{first}": "excellent", f"grade.{second}": "very-good", f"grade.{third}": "good"}
    pen.write(card, {**grades, "places": [str(first), str(second)]})
    pen.sign(card)
