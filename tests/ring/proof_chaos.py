"""Chaos: three tablets of one ring, a network that loses and repeats, a server killed between and within requests.

Some edits are refused, and for a while the office has withdrawn a dog, so that what is written on it is held.
Afterwards no acknowledged edit may be lost, none doubled, and tablets and server must show the same.
"""

import contextlib
import json
import random
import signal
import threading
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from tempfile import TemporaryDirectory

from scoring.merging import settled
from tests.places import postgres
from tests.ring.tablets_over_http import Lost, Tablet
from tests.served import Site, served

LOSSES, KILLS, EDITS_PER_KILL = 1000, 200, 15
FIELDS = ("mark.skull", "mark.topline", "mark.croup", "praise.reach", "remark")
TO_BE_REFUSED = 9
OFFICE = "from ringside.entries.models import Entry; Entry.objects.filter(pk={}).update(state={!r})"
ROWS = """
import json
from ringside.ring.models import Edit, Mark, Sheet
print(json.dumps({
    "edits": list(Edit.objects.exclude(device="demo-tablet").values_list("id", "state", "sequence")),
    "fields": {s.key: s.fields for s in Sheet.objects.all()},
    "disputed": {s.key: s.disputed for s in Sheet.objects.all()},
    "marks": [[m.sheet_id, m.point, m.mark] for m in Mark.objects.all()],
}))
"""


def main(share: float) -> None:
    """Both databases at once: each run mostly waits for its server to come back."""
    servers = {"SQLite": None} | ({"PostgreSQL": server} if (server := postgres()) else {})
    with ThreadPoolExecutor(len(servers)) as both:
        for words in both.map(lambda name: f"{name}: {_run_on(servers[name], share)}", servers):
            print(words, flush=True)


def _run_on(server: str | None, share: float) -> str:
    with TemporaryDirectory() as folder, served(Path(folder), server) as site:
        return run(site, share)


def run(site: Site, share: float, seed: int = 7) -> str:
    """Runs the share of the whole and checks what is left; what was done, in words."""
    chance = random.Random(seed)
    tablets = [Tablet(site.address, 1, f"tablet-{n}", seed + n) for n in range(3)]
    for tablet in tablets:
        tablet.enter()
    sheets = [entry["sheet"] for one in tablets[0].day()["classes"][:3] for entry in one["entries"]]
    kills, losses = max(2, round(KILLS * share)), max(10, round(LOSSES * share))
    lost = 0
    for turn in range(kills):
        if turn in (kills // 4, kills // 2):
            state = "withdrawn" if turn == kills // 4 else "entered"
            site.manage("shell", "--no-imports", "-c", OFFICE.format(sheets[0].partition(":")[2], state))
        lost += _round(site, tablets, sheets, chance, losses / kills)
    for tablet in (*tablets, *tablets):
        tablet.send_all()
    held = _check(site, tablets, sheets)["held"]
    for number, edit_id in enumerate(sorted(held)):
        tablets[0].decide(edit_id, "yes" if number % 2 else "no")
    for tablet in tablets:
        tablet.send_all()
    kept = _check(site, tablets, sheets)
    assert not kept["held"]
    made = sum(tablet.made for tablet in tablets)
    aside = f"{len(held)} held and decided, {len(kept['refused'])} refused"
    trouble = f"{kills} kills, {lost} exchanges lost"
    return f"{made} edits by 3 tablets ({aside}), {trouble}: none lost, none doubled, all the same"


def _round(site: Site, tablets: list[Tablet], sheets: list[str], chance: random.Random, losses: float) -> int:
    """Some edits and exchanges, the server killed somewhere among them, and up again. How many were lost."""
    killer = threading.Timer(chance.uniform(0, 0.8), site.stop, [signal.SIGKILL])
    killer.start()
    lost = 0
    for _ in range(EDITS_PER_KILL):
        tablet = chance.choice(tablets)
        field = chance.choice(FIELDS)
        mark = TO_BE_REFUSED if chance.random() < 0.05 else chance.randint(-3, 3)
        value = {"mark": mark, "praise": True, "remark": f"words {chance.random()}"}
        # The first sheet more often: it is the one whose dog is withdrawn for a while.
        tablet.set(chance.choice([*sheets, *sheets[:1] * 3]), field, value[field.partition(".")[0]])
        fate = chance.random() * EDITS_PER_KILL / max(losses, 1)
        try:
            tablet.send(lose_request=fate < 0.5, lose_answer=0.5 <= fate < 1)
        except Lost:
            lost += 1
    killer.join()
    with contextlib.suppress(Lost):
        tablets[0].send()
    site.start()
    return lost


def _check(site: Site, tablets: list[Tablet], sheets: list[str]) -> dict[str, set[str]]:
    """What is left, checked against what the tablets were promised; the edits that do not count, by their state."""
    rows = json.loads(site.manage("shell", "--no-imports", "-c", ROWS))
    kept = [edit_id for edit_id, _, _ in rows["edits"]]
    assert len(kept) == len(set(kept)), "an edit was taken twice"
    assert set(kept) == {edit_id for tablet in tablets for edit_id in tablet.promised}, "an answered edit is lost"
    assert len({sequence for _, _, sequence in rows["edits"]}) == len(kept), "two edits share a number"
    aside = {
        state: {name for name, its, _ in rows["edits"] if its == state} for state in ("held", "left-out", "refused")
    }
    assert aside["refused"] == {edit_id for tablet in tablets for edit_id in tablet.refused}
    for tablet in tablets:
        assert tablet.left_out == set().union(*aside.values()), "a tablet counts what the server does not"
    marks = {(sheet, point): mark for sheet, point, mark in rows["marks"]}
    for sheet in sheets:
        shown = [tablet.merged(sheet) for tablet in tablets]
        assert shown[0] == shown[1] == shown[2], f"tablets differ on {sheet}"
        values = {field: value for field, value in settled(shown[0]).items() if value is not None}
        assert rows["fields"].get(sheet, {}) == values, f"server and tablets differ on {sheet}"
        assert rows["disputed"].get(sheet, []) == list(shown[0].disputed)
        points = {field[5:]: value for field, value in values.items() if field.startswith("mark.")}
        assert {point: mark for (key, point), mark in marks.items() if key == sheet} == points
    return aside
