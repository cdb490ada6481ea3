"""A whole show of 3,000 dogs from set-up to results on a real site, counted again beside it, and moved to another.

The site has another show already. Set up, taken in, numbered, planned, published, printed and written out by the
project's own commands; decided and judged by the actions behind the office's pages and by paired tablets at the ring's
own door. A second, smaller show under a body that counts points goes the same way.
"""

import time
from collections.abc import Iterator, Sequence
from concurrent.futures import Future, ThreadPoolExecutor
from contextlib import contextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from tests.home.big_show import checking, recount
from tests.home.big_show.bodies import CANADA, FCI
from tests.home.big_show.chair import Chair
from tests.home.big_show.judging import Judged, RingTablet
from tests.home.big_show.plan import Plan, appointments, as_csv, plan
from tests.home.whole.comparing import different
from tests.places import postgres
from tests.served import Site, served, unprepared

SECRETARY = "secretary@meadow.example"
DOGS, DOGS_FOR_POINTS, LEAST = 3000, 600, 30
TABLETS_AT_ONCE = 2


def main(share: float) -> None:
    today = datetime.now(tz=UTC).date()
    with (
        TemporaryDirectory() as one,
        TemporaryDirectory() as other,
        served(Path(one), postgres()) as here,
        unprepared(Path(other), None) as there,
        ThreadPoolExecutor(1) as background,
    ):
        # The second installation is made ready while the first works.
        elsewhere = background.submit(_ready, there)
        try:
            with Chair(here) as chair:
                chair.manage("first_account", SECRETARY)
                for body, dogs in ((FCI, DOGS), (CANADA, DOGS_FOR_POINTS)):
                    told = plan(body, max(LEAST, round(dogs * share)), today + timedelta(days=40))
                    print(
                        f"{told.name}: {len(told.entered)} dogs of {len(told.units)} breeds and varieties", flush=True
                    )
                    BigShow(here, chair, Path(one), told).run(elsewhere, Path(other))
        finally:
            elsewhere.result().close()


def _ready(site: Site) -> Chair:
    site.manage("prepare")
    return Chair(site)


@contextmanager
def step(words: str) -> Iterator[list[str]]:
    """Prints what was done and how long it took; the block may add to the words."""
    said, began = [words], time.monotonic()
    yield said
    print(f"   {'; '.join(said)}: {time.monotonic() - began:.1f} s", flush=True)


class BigShow:
    """One show on one site, step by step; `folder` is for what goes in and comes out."""

    def __init__(self, site: Site, chair: Chair, folder: Path, told: Plan) -> None:
        self.site, self.chair, self.folder = site, chair, folder / told.slug
        self.told, self.body = told, told.body
        self.folder.mkdir()
        self.judged: list[Judged] = []
        self.breeds: list[recount.Breed] = []

    def run(self, elsewhere: Future[Chair], folder: Path) -> None:
        self.set_up()
        self.take_entries()
        self.number()
        self.plan_hours()
        self.judge()
        finals = self.judge_finals()
        self.read_exports(finals)
        self.read_papers()
        self.move(elsewhere.result(), folder / self.told.slug)

    def command(self, name: str, *arguments: str) -> str:
        return self.chair.manage(name, self.told.slug, "--by", SECRETARY, *arguments)

    def desk(self, doing: str, **question: Any) -> Any:
        """The answer of an action that the office's pages call."""
        return self.chair.ask(doing=doing, slug=self.told.slug, by=SECRETARY, **question)

    def set_up(self) -> None:
        first = self.told.first_day
        days = {"first-day": first, "last-day": first + timedelta(days=self.told.days - 1),
                "entries-close": first - timedelta(days=41)}  # fmt: skip
        with step("set up by command") as said:
            given = [word for name, day in days.items() for word in (f"--{name}", day.isoformat())]
            slug = self.chair.manage("show_new", self.told.name, "--by", SECRETARY, "--rules", self.body.code, *given)
            assert slug.strip() == self.told.slug
            said.append(self._appoint())

    def _appoint(self) -> str:
        file = self.folder / "judges.csv"
        file.write_bytes(appointments(self.told))
        [words, *warnings] = self.command("show_appoint", str(file)).splitlines()
        assert warnings == [], "a judge has too many dogs"
        return words

    def take_entries(self) -> None:
        """The good lines first; what was refused is mended or set aside, and taken; late ones are decided."""
        file = self.folder / "entries.csv"
        file.write_bytes(as_csv(self.told.lines))
        with step("entries read from a file and taken by command") as said:
            [_, *refused] = self.command("show_entries", str(file)).splitlines()
            self._check_refused(refused)
            said += [f"{len(refused)} lines refused as planned"]
            said += self.command("show_entries", str(file), "--take").splitlines()[:1]
        with step("mended, set aside and taken") as said:
            wrong = [(at, line) for at, line in enumerate(self.told.lines, 2) if line.wrong]
            mends = {at: dict(line.mend) for at, line in wrong if not line.is_left_out}
            self.desk("mend", mends=mends, aside=[at for at, line in wrong if line.is_left_out])
            said.append(self.command("show_entries", str(file), "--take").strip())
            assert said[-1].endswith("0 may be taken, 0 are to be mended.")
        # With the entries in, the limits of the judges' days are known.
        self._appoint()

    def _check_refused(self, refused: Sequence[str]) -> None:
        wrong = {at: line for at, line in enumerate(self.told.lines, 2) if line.wrong}
        told = {int(words.partition(",")[0].removeprefix("Line ")): words for words in refused}
        assert told.keys() == wrong.keys()
        for at, line in wrong.items():
            assert line.wrong in told[at], told[at]

    def number(self) -> None:
        with step("numbers fixed") as said:
            said.append(self.command("show_numbers").strip())
            late = [{"texts": dict(line.texts), "accept": not line.is_left_out} for line in self.told.late]
            accepted = self.desk("late", entries=late)
            assert accepted == sum(one["accept"] for one in late)
            said += [f"{accepted} of {len(late)} late entries accepted", self.command("show_numbers").strip()]
            self.numbers = checking.entries(self._written("before"), self.told)
            some = [number for number in self.numbers.values() if number % 60 == 7]
            self.withdrawn = set(self.desk("withdraw", numbers=some))
            said.append(f"{len(self.withdrawn)} withdrawn afterwards")

    def plan_hours(self) -> None:
        """Every dog has its hour, and no judge two at once: read back from what the command printed."""
        with step("timetable planned") as said:
            printed = self.command("show_timetable", "--end", "18:00", "--seconds", "0.5", "--keep").splitlines()
            dogs, until, rows = 0, "", 0
            for line in printed:
                if line[:2] == "20":
                    until = ""
                elif line.startswith("  "):
                    hours, _, title = line.strip().partition("  ")
                    start, end = hours.split("-")
                    assert until <= start < end <= "18:00", line
                    until, rows = end, rows + 1
                    dogs += int(title.rpartition("(")[2].rstrip(")")) if title.endswith(")") else 0
            assert dogs == len(self.numbers) - len(self.withdrawn)
            left = [line for line in printed if "finds no room" in line or "no judge" in line]
            assert left == []
            said += [f"{rows} lines", printed[-1]]

    def judge(self) -> None:
        with step("judged and signed on paired tablets") as said:
            tablets = self._tablets()
            with ThreadPoolExecutor(TABLETS_AT_ONCE) as rings:
                found = rings.map(lambda tablet: list(tablet.judge_all(self.body)), tablets)
                self.judged = [one for of_ring in found for one in of_ring]
            said.append(f"{len(self.judged)} classes in {len(tablets)} rings")
        with step("classes published, awards given, signed and published") as said:
            said.append(self._published("classes"))
            self._give_awards(tablets)
            said.append(self._published("breeds' awards"))
            said.append(f"{sum(tablet.made for tablet in tablets)} edits")

    def _tablets(self) -> list[RingTablet]:
        codes = self.desk("codes")
        tablets = [RingTablet(self.site.address, int(ring), f"ring-{ring}", int(ring)) for ring in codes]
        for tablet, code in zip(tablets, codes.values(), strict=True):
            tablet.pair(code)
        numbers = sorted(number for one in tablets for number in one.judged_here)
        assert numbers == sorted(set(self.numbers.values()) - self.withdrawn), "a dog is in no ring, or in two"
        return tablets

    def _published(self, what: str) -> str:
        """Everything of this kind is published; nothing of it waits."""
        printed = self.command("show_publish").splitlines()
        words = next(line for line in printed if f" {what} published" in line)
        assert words.endswith(", 0 wait."), "\n".join(printed)
        return words

    def _give_awards(self, tablets: Sequence[RingTablet]) -> None:
        groups = {unit.title: self.body.group_of(unit.breed) for unit in self.told.units}
        self.breeds = [
            recount.Breed(title, group, [one for one in self.judged if one.breed == title])
            for title, group in groups.items()
        ]
        for breed in self.breeds:
            recount.breed_awards(self.body, breed)
        if not self.body.counts_points:
            recount.one_without_right(self.breeds, "best-junior", "junior")
        by_title = {breed.title: breed for breed in self.breeds}
        for tablet in tablets:
            for at_ring in tablet.breeds:
                given = by_title[at_ring.title].awards
                assert given.keys() <= set(at_ring.codes)
                tablet.give(at_ring.sheet, {code: given.get(code, False) for code in at_ring.codes})
            tablet.sign([at_ring.sheet for at_ring in tablet.breeds])
        # The project's own check of the awards finds the one that was given against the rules, and no other.
        found = self.desk("findings")
        assert found.keys() == {breed.title for breed in self.breeds if breed.without_right}
        for title, words in found.items():
            assert len(words) == 1
            assert str(next(iter(by_title[title].without_right.values()))) in words[0]

    def judge_finals(self) -> recount.FinalsCount:
        with step("finals held, judged and published to best in show") as said:
            held = {tuple(one) for one in self.desk("hold")}
            counted = recount.finals(self.body, self.breeds)
            assert held == set(counted.places), "the finals held are not those of the recount"
            asked = [(*final, places) for final, places in counted.places.items()]
            for award, group, competing, findings in self.desk("finals", finals=asked):
                assert set(competing) == counted.competing[award, group], (award, group)
                assert findings == []
            said.append(self._published("finals"))
        return counted

    def _written(self, name: str) -> Path:
        folder = self.folder / name
        self.command("show_exports", str(folder))
        return folder

    def read_exports(self, finals: recount.FinalsCount) -> None:
        with step("written out and counted again") as said:
            folder = self._written("exports")
            checking.results(folder, self.judged)
            checking.awards(folder, self.breeds, finals)
            counted = recount.points(self.breeds, finals) if self.body.counts_points else {}
            checking.points(folder, counted)
            checking.schedule(folder, self.told)
            said.append(f"{sum(len(breed.awards) for breed in self.breeds)} awards, {len(finals.places)} finals")
            said += [f"{sum(counted.values())} points of {len(counted)} dogs"] if counted else []

    def read_papers(self) -> None:
        folder = self.folder / "papers"
        with step("every paper printed") as said:
            said.append(self.command("show_papers", str(folder), "--site", "https://shows.example").strip())
        with step("every paper read back") as said:
            names = {number: name for name, number in self.numbers.items()}
            present = {number: names[number] for one in self.judged for number in one.present}
            shown = set(names) - self.withdrawn
            said.append(f"pages: {checking.papers(folder, shown, present)}")

    def move(self, there: Chair, folder: Path) -> None:
        """The whole show to an empty second installation on another database, and the same there."""
        folder.mkdir()
        one, other = self.folder / "whole.zip", folder / "whole.zip"
        with step("taken out, taken in by another installation, taken out there: the same") as said:
            self.chair.manage("show_out", self.told.slug, str(one))
            there.manage("show_in", str(one))
            there.manage("show_out", self.told.slug, str(other))
            assert different(one.read_bytes(), other.read_bytes()) == []
            there.manage("show_exports", self.told.slug, "--by", SECRETARY, str(folder / "exports"))
            for name in ("results.json", "results.csv", "awards.csv", "entries.csv"):
                assert (folder / "exports" / name).read_bytes() == (self.folder / "exports" / name).read_bytes(), name
            said.append(f"{one.stat().st_size // 1000} kB")
