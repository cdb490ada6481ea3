"""A clip stays on the device: the chosen frame alone becomes the photo. Coming and going dogs, and dogs in motion."""

import base64

import pytest
from playwright.sync_api import expect

from tests.browser.photos.hand import Hand, choose, number, numbers
from tests.browser.photos.test_marking import open_marking, read, readings
from tests.measuring.dogs import FRONT, MOVING, REAR, pictured
from tests.measuring.independent import measured
from tests.photos.pictures import picture

pytestmark = pytest.mark.browser

# A clip made in the page itself: a grey that grows lighter, so that each frame tells its time. A busy machine records a
# shorter one than was drawn: it is made again until it can be stepped.
MAKE_CLIP = """async () => {
  const length = (blob) => new Promise((resolve) => {
    const video = document.createElement("video");
    video.onloadedmetadata = () => (video.currentTime = 1e6);
    video.onseeked = () => resolve(video.duration);
    video.onerror = () => resolve(0);
    video.src = URL.createObjectURL(blob);
  });
  let blob = await record();
  for (let tries = 0; tries < 10 && (await length(blob)) < 0.8; tries += 1) blob = await record();
  const bytes = new Uint8Array(await blob.arrayBuffer());
  let text = "";
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text);

  async function record() {
  const canvas = document.createElement("canvas");
  [canvas.width, canvas.height] = [640, 480];
  const pen = canvas.getContext("2d"), parts = [];
  const recorder = new MediaRecorder(canvas.captureStream(30), { mimeType: "video/webm" });
  recorder.ondataavailable = (event) => parts.push(event.data);
  const done = new Promise((resolve) => (recorder.onstop = resolve));
  recorder.start();
  const start = performance.now();
  await new Promise((resolve) => {
    const drawing = setInterval(() => {
      const gone = performance.now() - start;
      pen.fillStyle = `rgb(${Math.min(255, gone / 8)}, 90, 90)`;
      pen.fillRect(0, 0, 640, 480);
      if (gone < 2500) return;
      clearInterval(drawing);
      resolve();
    }, 33);
  });
  recorder.stop();
  await done;
  return new Blob(parts, { type: "video/webm" });
  }
}"""


def test_a_clip_is_stepped_and_one_frame_of_it_marked(sized):
    page = sized("tablet")
    open_marking(page)
    clip = base64.b64decode(page.evaluate(MAKE_CLIP))
    sent = []
    page.on("request", lambda request: sent.append(request) if request.method == "POST" else None)
    page.get_by_text("moving, from the side").tap()
    page.get_by_label("Choose a short clip").set_input_files(
        {"name": "trot.webm", "mimeType": "video/webm", "buffer": clip}
    )
    use = page.get_by_role("button", name="Mark this frame")
    expect(use).to_be_enabled()
    # A busy machine records less than was drawn: a step stops at the clip's end.
    told = page.locator("p.help.num[role=status]")
    length = float(told.inner_text().split()[3])
    for button, seconds in (("Ten frames on", 10 / 30), ("One frame on", 11 / 30)):
        page.get_by_role("button", name=button).tap()
        expect(told).to_contain_text(f"{min(seconds, length):.2f} s of")
    page.get_by_role("button", name="One frame back").tap()
    use.tap()
    expect(page.locator(".stage")).to_be_visible()
    expect(page.locator(".step")).to_contain_text("level line")
    assert sent == []


@pytest.mark.parametrize(("view", "landmarks"), [("moving-side", MOVING), ("front", FRONT), ("rear", REAR)])
def test_moving_and_coming_dogs_are_read_as_the_core_reads_them(sized, view, landmarks):
    page = sized("tablet")
    open_marking(page)
    choose(page, picture(size=(1250, 800)), view)
    halved = {name: (x / 2, y / 2) for name, (x, y) in landmarks.items()}
    Hand(page).mark({**halved, "ground-1": (150, 700), "ground-2": (1100, 700)})
    shown, expected = numbers(page), measured(pictured(view))
    assert set(shown) == set(expected)
    for code, words in shown.items():
        assert number(words) == pytest.approx(expected[code][0], abs=0.06), code
    read(page)
    assert readings(page) or view == "front"
