"""How many frames pass from a tap on the sheet to its mark on the screen, on a processor slowed four times."""

import statistics
from pathlib import Path
from tempfile import TemporaryDirectory

from playwright.sync_api import Page, sync_playwright

from tests.browser.conftest import QUIET_TABLET
from tests.places import chromium
from tests.served import served

SLOWED, TAPS = 4, 60
# A quick hand: two to three taps a second, the finger on the glass for a twelfth of a second each.
PAUSES_MS = (330, 410, 370, 480, 350)
RESTS_MS = 80
# Counts the frames that began after the pointer had gone up, until the one that shows the mark as pressed.
WATCH = """
(touched) => {
  const stop = document.querySelector(touched);
  window.frames_to_mark = new Promise((done) => stop.addEventListener("click", (tap) => {
    let frames = 0;
    const look = (began) => {
      frames += began > tap.timeStamp;
      if (stop.getAttribute("aria-pressed") === "true") done([frames, performance.now() - tap.timeStamp]);
      else requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  }, { once: true, capture: true }));
}
"""


def main() -> None:
    if chromium() is None:
        print("A tap and its mark: left out, no Chromium found.")
        return
    with TemporaryDirectory() as folder, served(Path(folder)) as site, sync_playwright() as playwright:
        browser = playwright.chromium.launch(**QUIET_TABLET)
        page = browser.new_page(base_url=site.address, viewport={"width": 820, "height": 1180})
        found = taps(page)
        browser.close()
    frames, times = sorted(count for count, _ in found), sorted(took for _, took in found)
    within = sum(count <= 2 for count in frames)
    spread = f"half within {statistics.median(frames):g}, the slowest {frames[-1]}"
    print(f"frames from a tap to its mark, processor slowed {SLOWED} times: {spread}; {within} of {len(frames)} in two")
    print(f"milliseconds: half within {statistics.median(times):.0f}, nine of ten {times[len(times) * 9 // 10]:.0f}")


def taps(page: Page) -> list[tuple[int, float]]:
    """The frames and milliseconds that each of the taps took, on an empty sheet of the demo show."""
    page.goto("/")
    page.locator("form[action='/demo/judge/'] button").click()
    page.locator(".programme .class").first.click()
    page.locator(".row .stop").first.wait_for()
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
    found = []
    tiles = page.locator(".tile").count()
    for number in range(tiles):
        page.locator(".tile").nth(number).click()
        page.locator(".tile").nth(number).and_(page.locator("[aria-current]")).wait_for()
        rows = page.locator(".row:has(.stops):not([data-set])")
        points = rows.evaluate_all("rows => rows.map((row) => row.id)")
        for point in points[:20]:
            stop = f"#{point} .stop:nth-child(5)"
            page.locator(stop).scroll_into_view_if_needed()
            page.wait_for_timeout(PAUSES_MS[len(found) % len(PAUSES_MS)])
            page.evaluate(WATCH, stop)
            page.locator(stop).click(delay=RESTS_MS)
            found.append(tuple(page.evaluate("() => window.frames_to_mark")))
            if len(found) >= TAPS:
                return found
    return found
