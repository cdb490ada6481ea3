"""A driven pointer that marks like a hand: it comes near, presses, corrects a little, lifts; it errs by `sd` pixels."""

import math
import random
from dataclasses import dataclass

from playwright.sync_api import Page

from tests.browser.photos.camera import Place

ON_SCREEN = """([x, y]) => {
  const point = new DOMPoint(x, y).matrixTransform(document.querySelector(".stage").getScreenCTM());
  return [point.x, point.y];
}"""


# What a person takes, in seconds. A pointing movement: 0.1 + 0.15 log2(distance / width + 1), Fitts 1954 in the form of
# MacKenzie 1992 (ISO 9241-411); its two figures, and the times to read, correct and choose, from memory, generous.
READ_S, CORRECT_S, THINK_S, CHOOSE_S = 1.2, 0.8, 2.0, 6.0
TARGET_PX = 6.0


def travel_seconds(distance: float, width: float) -> float:
    return 0.1 + 0.15 * math.log2(distance / width + 1)


@dataclass
class Hand:
    """`seconds` adds up what a person would have taken to read, reach, press, correct and lift for every point."""

    page: Page
    sd: float = 0.0
    seed: int = 1
    seconds: float = 0.0

    def __post_init__(self) -> None:
        self.draw = random.Random(self.seed)
        self.at = (0.0, 0.0)

    def mark(self, places: dict[str, Place]) -> list[str]:
        """Marks whatever the page asks for until it asks no more; the names, in the page's order."""
        stage, names = self.page.locator(".stage"), []
        while name := stage.get_attribute("data-waits"):
            self.touch(places[name])
            names.append(name)
        return names

    def touch(self, place: Place) -> None:
        x, y = (part + self.draw.gauss(0, self.sd) for part in place)
        to_x, to_y = self.page.evaluate(ON_SCREEN, [x, y])
        self.seconds += READ_S + travel_seconds(math.dist(self.at, (to_x, to_y)), TARGET_PX) + CORRECT_S
        self.at = (to_x, to_y)
        self.page.mouse.move(to_x + 9, to_y - 7)
        self.page.mouse.down()
        self.page.mouse.move(to_x + 3, to_y - 2, steps=3)
        self.page.mouse.move(to_x, to_y)
        self.page.mouse.up()


def choose(page: Page, content: bytes, view: str = "standing-side") -> None:
    page.locator(f".views input[value={view}]").check(force=True)
    file = {"name": "dog.jpg", "mimeType": "image/jpeg", "buffer": content}
    page.get_by_label("Choose a photo").set_input_files(file)
    page.locator(".stage").wait_for()


def numbers(page: Page) -> dict[str, str]:
    """The live table: code to what stands there."""
    rows = page.locator(".numbers tr[data-code]:visible")
    return {row.get_attribute("data-code"): row.locator("td").first.inner_text() for row in rows.all()}


def number(words: str) -> float:
    return float(words.rstrip("°").replace("−", "-"))
