"""Three tablets and a server that lose, repeat and reorder what they say to each other end with one sheet."""

from typing import Any

from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, rule

from scoring.merging import covers_for, merge, replaces_for
from scoring.sheet import Edit, digest
from tests.merging.edits import edit

tablets = st.integers(0, 2)
fields = st.sampled_from(["mark.croup", "remark", "set.missing"])


class Tablet:
    def __init__(self) -> None:
        self.edits: dict[str, Edit] = {}
        self.unsent: dict[str, Edit] = {}
        self.wrote: set[str] = set()

    def keep(self, written: Edit) -> None:
        self.edits[written.id] = self.unsent[written.id] = written
        self.wrote.add(written.id)

    def hear(self, edits: list[Edit], digests: dict[str, str]) -> None:
        self.edits |= {each.id: each for each in edits}
        self.unsent = {name: each for name, each in self.unsent.items() if digests.get(name) != digest(each)}


class Show(RuleBasedStateMachine):
    def __init__(self) -> None:
        super().__init__()
        self.tablets = [Tablet() for _ in range(3)]
        self.server: dict[str, Edit] = {}
        self.written = 0

    def write(self, tablet: Tablet, field: str, value: Any) -> None:
        self.written += 1
        seen = replaces_for(tablet.edits.values(), field, tablet.unsent)
        tablet.keep(edit(f"e{self.written}", field, value, seen))

    @rule(number=tablets, field=fields, value=st.integers(0, 2))
    def a_judge_writes(self, number: int, field: str, value: int) -> None:
        self.write(self.tablets[number], field, [value] if field.startswith("set.") else value)

    @rule(number=tablets)
    def a_judge_signs(self, number: int) -> None:
        tablet = self.tablets[number]
        self.write(tablet, "signature", list(covers_for(tablet.edits.values())))

    @rule(number=tablets)
    def a_judge_withdraws_the_signature(self, number: int) -> None:
        self.write(self.tablets[number], "signature", None)

    @rule(number=tablets, data=st.data(), answered=st.booleans(), reads=st.booleans())
    def a_batch_is_sent(self, number: int, data: st.DataObject, answered: bool, reads: bool) -> None:
        """Some of what waits, in any order; the answer may be lost, and so may the news."""
        tablet = self.tablets[number]
        batch = data.draw(st.lists(st.sampled_from(sorted(tablet.unsent) or [""]), unique=True))
        self.take([tablet.unsent[name] for name in batch if name])
        if answered:
            tablet.hear(list(self.server.values()) if reads else [], {n: digest(e) for n, e in self.server.items()})

    def take(self, batch: list[Edit]) -> None:
        self.server |= {each.id: each for each in batch}

    @invariant()
    def nothing_is_lost(self) -> None:
        held = self.server.keys() | {name for tablet in self.tablets for name in tablet.unsent}
        assert held == {f"e{number}" for number in range(1, self.written + 1)}

    @invariant()
    def a_tablet_that_heard_no_other_never_disputes_with_itself(self) -> None:
        for tablet in self.tablets:
            sheet = merge(tablet.edits.values())
            assert (sheet.disputed, sheet.incomplete) == ((), ()) or tablet.edits.keys() != tablet.wrote

    def teardown(self) -> None:
        for tablet in self.tablets:
            self.take(list(tablet.unsent.values()))
        for tablet in self.tablets:
            tablet.hear(list(self.server.values()), {name: digest(each) for name, each in self.server.items()})
        sheets = [merge(reversed(tablet.edits.values())) for tablet in self.tablets]
        assert sheets == [merge(self.server.values())] * 3
        assert not any(tablet.unsent for tablet in self.tablets)
        assert not sheets[0].incomplete


TestShow = Show.TestCase
