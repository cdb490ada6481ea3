"""A show day without network: eighty dogs, two thousand edits, twenty photos, the browser killed ten times.

Back on the network the server must hold exactly what was set, once each. What a finger had touched when the browser
died may be there or not; the page says after the restart which, and is held to that.
"""

import json
import random
import re
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from playwright.sync_api import Page, Playwright, expect, sync_playwright

from ringside.drawings.build import RECTANGULAR
from tests.browser.photos.camera import Camera, photo, places
from tests.browser.photos.hand import Hand, choose
from tests.merging.test_killed_browser import MortalBrowser
from tests.places import chromium
from tests.served import Site, served

DOGS, EDITS, PHOTOS, KILLS = 80, 2000, 20, 10
DOGS_IN_CLASS = 10
ENTER_DOGS = """
from datetime import date
from ringside.dogs.models import Dog
from ringside.entries.models import Entry
from ringside.ring.models import Edit
from ringside.shows.models import Ring, ShowClass
breed = Ring.objects.get(pk=1).breeds.order_by("id").first()
codes = ("puppy", "junior", "intermediate", "open", "working", "champion", "veteran")
classes = [
    ShowClass.objects.get_or_create(show_breed=breed, sex=sex, code=code)[0]
    for sex in ("dog", "bitch") for code in codes
]
# Where the demo's judge has signed, what is set waits; here all of it is to count at once.
classes = [one for one in classes if not Edit.objects.filter(sheet="class:" + str(one.pk)).exists()]
for n in range({dogs}):
    show_class = classes[n // {in_class}]
    sex = show_class.sex
    dog = Dog.objects.create(name="Proof " + str(n), breed=breed.breed, sex=sex, born=date(2022, 5, 5))
    Entry.objects.create(show=breed.show, show_class=show_class, dog=dog, number=1000 + n)
"""
ROWS = """
import json
from ringside.ring.models import Edit
print(json.dumps([[e.sheet, e.field, e.value] for e in Edit.objects.exclude(device="demo-tablet")]))
"""
PHOTO_ROWS = """
from ringside.photos.models import Photo
print([one.dog.entries.get().pk for one in Photo.objects.filter(ring__isnull=False).select_related("dog")])
"""
# Each touch of a dog's page: where it is touched, and how the page shows that it is set.
STOP = "#point-{point} .stop:nth-child({n})"
PHOTOS_WAITING = """() => new Promise((answer) => {
  const opening = indexedDB.open("ringside-photos", 1);
  opening.onsuccess = () => {
    const table = opening.result.transaction("drafts").objectStore("drafts").count();
    table.onsuccess = () => { opening.result.close(); answer(table.result); };
  };
})"""
PRESSED = "([touched]) => document.querySelector(touched)?.matches('[aria-pressed=true], :checked') ?? false"


def main(share: float) -> None:
    if chromium() is None:
        print("Left out: no Chromium found.")
        return
    with TemporaryDirectory() as folder, served(Path(folder)) as site, sync_playwright() as playwright:
        print(run(site, playwright, Path(folder) / "tablet", share))


def run(site: Site, playwright: Playwright, profile: Path, share: float, seed: int = 11) -> str:
    """Runs the share of the day and checks what the server has; what was done, in words."""
    dogs, edits, kills = max(2, round(DOGS * share)), max(40, round(EDITS * share)), max(1, round(KILLS * share))
    photos = max(1, round(PHOTOS * share))
    site.manage("shell", "--no-imports", "-c", ENTER_DOGS.format(dogs=dogs, in_class=DOGS_IN_CLASS))
    tablet = Tablet(site, playwright, profile)
    try:
        day = tablet.keep_page()
        site.stop()
        taken: list[int] = []
        written = _the_day(tablet, day, Day(edits, kills, photos), taken, random.Random(seed))
        site.start()
        # A browser that dies may have lost its sign-in with it; what is written waits for the next.
        tablet.page.goto(site.address)
        tablet.sign_in()
        expect(tablet.page.locator("#status")).to_have_text("Everything is on the server", timeout=120_000)
        tablet.expect_photos_sent()
    finally:
        tablet.browser.kill()
    rows = json.loads(site.manage("shell", "--no-imports", "-c", ROWS))
    found = {(sheet, field, json.dumps(value)) for sheet, field, value in rows}
    assert len(found) == len(rows), "an edit was taken twice"
    assert found == written, "the server does not hold what was set"
    kept = json.loads(site.manage("shell", "--no-imports", "-c", PHOTO_ROWS))
    assert sorted(kept) == sorted(taken), f"the server does not hold each photo once: {kept} for {taken}"
    done = f"{len(rows)} edits and {len(kept)} photos of {dogs} dogs without network, {kills} kills of the browser"
    return f"{done}: all there, once each"


class Tablet:
    """A browser that can be killed, and its page of the ring."""

    def __init__(self, site: Site, playwright: Playwright, profile: Path) -> None:
        self.site, self.playwright, self.browser = site, playwright, MortalBrowser(profile)
        self.open("/")

    def open(self, address: str) -> None:
        browser = self.playwright.chromium.connect_over_cdp(self.browser.start())
        self.page: Page = browser.contexts[0].new_page()
        self.page.set_viewport_size({"width": 820, "height": 1180})
        self.page.goto(self.site.address + address)

    def keep_page(self) -> list[dict]:
        """Signs in and waits until the page is kept; the classes of the day."""
        self.sign_in()
        expect(self.page.get_by_role("region", name="This tablet")).to_contain_text("opens again without network")
        self.page.locator(".programme .class:not([href*=breed])").first.click()
        expect(self.page.locator(".photos")).to_contain_text("also without network", timeout=60_000)
        return self.page.evaluate("async () => (await (await fetch('day/')).json()).classes")

    def sign_in(self) -> None:
        self.page.locator("form[action='/demo/judge/'] button").click()

    def die(self) -> None:
        """The battery is taken out; then the tablet is switched on again, still without network."""
        address = self.page.url.removeprefix(self.site.address)
        self.browser.kill()
        self.open(address)

    def take(self, one: dict, entry: dict) -> None:
        self.page.evaluate("(words) => { location.hash = words; }", f"class={one['id']}&dog={entry['id']}")
        expect(self.page.locator(".sheet h2 .number")).to_have_text(str(entry["number"]))

    def say(self, words: str) -> None:
        """The judge's own words, kept when the finger goes elsewhere."""
        self.page.get_by_label("In your own words").fill(words)
        self.page.locator(".sheet h2").click()

    def photograph(self) -> None:
        """Takes a photo of the dog in hand, marks it, and comes back to its sheet."""
        self.page.get_by_role("link", name="Photo of this dog").click()
        expect(self.page.locator("#back")).to_contain_text("number")
        choose(self.page, photo(RECTANGULAR, Camera()))
        Hand(self.page, 1.0).mark(places(RECTANGULAR, Camera()))
        self.page.get_by_role("button", name="Keep and read").click()
        expect(self.page.locator("#where")).to_contain_text("safe on this device")
        self.page.locator("#back").click()
        expect(self.page.locator(".photos")).to_contain_text("1 photo of this dog waits on this tablet")

    def expect_photos_sent(self) -> None:
        """Until no photo waits on the tablet any more."""
        for _ in range(600):
            if not self.page.evaluate(PHOTOS_WAITING):
                return
            self.page.wait_for_timeout(500)
        raise AssertionError("photos wait on the tablet still")

    def touch(self, where: str) -> None:
        self.page.evaluate("([touched]) => document.querySelector(touched).click()", [where])

    def shows(self, where: str) -> bool:
        return self.page.evaluate(PRESSED, [where])


@dataclass(frozen=True)
class Day:
    """How much of a day is done."""

    edits: int
    kills: int
    photos: int


def _the_day(tablet: Tablet, day: list[dict], much: Day, taken: list[int], chance: random.Random) -> set:
    """Sets so many edits, dog by dog; what was set: sheet, field, value as JSON. `taken` gets entries with a photo."""
    written: set[tuple[str, str, str]] = set()
    deaths = set(chance.sample(range(5, much.edits), much.kills))
    new = [(each, dog) for each in day for dog in each["entries"] if dog["number"] >= 1000]
    for number, (one, entry) in enumerate(new):
        tablet.take(one, entry)
        for sheet, field, value, where in _touches(tablet.page, one, entry, chance):
            if len(written) >= much.edits:
                break
            tablet.touch(where)
            if len(written) in deaths:
                deaths.remove(len(written))
                tablet.die()
                expect(tablet.page.locator(".sheet h2 .number")).to_have_text(str(entry["number"]))
                _expect_waiting(tablet.page, len(written))
                if not tablet.shows(where):
                    continue
            _until(tablet, where)
            written.add((sheet, field, json.dumps(value)))
        if len(taken) * len(new) < much.photos * (number + 1) and len(taken) < much.photos:
            tablet.photograph()
            taken.append(entry["id"])
        if len(written) < much.edits:
            tablet.say(f"Number {entry['number']} shown in hard condition.")
            written.add((entry["sheet"], "remark", json.dumps(f"Number {entry['number']} shown in hard condition.")))
            _expect_waiting(tablet.page, len(written))
        if entry is one["entries"][-1] and len(written) + 3 <= much.edits:
            written |= _places(tablet, one)
            _expect_waiting(tablet.page, len(written))
    return written


def _places(tablet: Tablet, one: dict) -> set[tuple[str, str, str]]:
    """The first two dogs that may be placed, tapped in order."""
    tablet.page.get_by_role("button", name="Line-up").click()
    tiles, placed, found = tablet.page.locator(".lineup .tile:enabled"), [], set()
    ids = {str(entry["number"]): str(entry["id"]) for entry in one["entries"]}
    for place in range(2):
        placed.append(ids[tiles.nth(place).locator(".number").inner_text()])
        tiles.nth(place).click()
        expect(tablet.page.locator(".order .place")).to_have_count(place + 1)
        found.add((one["sheet"], "places", json.dumps(placed)))
    return found


def _touches(page: Page, one: dict, entry: dict, chance: random.Random) -> list[tuple[str, str, object, str]]:
    """Every two-sided point with its mark, some praise, and the grade: sheet, field, value, where to touch."""
    points = page.evaluate("[...document.querySelectorAll('.row:has(.stops)')].map((row) => row.id.slice(6))")
    marks = [(point, chance.randint(-3, 3)) for point in points]
    touches = [(entry["sheet"], f"mark.{p}", mark, STOP.format(point=p, n=mark + 4)) for p, mark in marks]
    praised = chance.sample(points, 6)
    touches += [(entry["sheet"], f"praise.{point}", True, f"#point-{point} .praise") for point in praised]
    grades = [grade["code"] for grade in one["grades"] if not grade["needs_reason"]][:3]
    if grades:
        grade = chance.choice(grades)
        where = f".grade input[value='{grade}']"
        touches.append((one["sheet"], f"grade.{entry['id']}", grade, where))
    return touches


def _until(tablet: Tablet, where: str) -> None:
    """Until the page shows it as set; three seconds at most."""
    for _ in range(150):
        if tablet.shows(where):
            return
        tablet.page.wait_for_timeout(20)
    said = tablet.page.locator("#status, #live").all_inner_texts()
    raise AssertionError(f"{where} was touched and is not set; the page says {said}")


def _expect_waiting(page: Page, least: int) -> None:
    """After a restart the page counts at least what was seen set before; one more may have been on its way."""
    expect(page.locator("#status")).to_have_text(
        re.compile(rf"^({least}|{least + 1}) edits? (is|are) safe"), timeout=30_000
    )
