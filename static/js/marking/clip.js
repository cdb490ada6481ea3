// A short clip, stepped frame by frame. It stays on the device: only the chosen frame becomes a photo.

import { h } from "../../ring/dom.js";
import { t } from "../../ring/say.js";

const FRAME_S = 1 / 30;
const steps = () => [
  [-10, t("Ten frames back")],
  [-1, t("One frame back")],
  [1, t("One frame on")],
  [10, t("Ten frames on")],
];

/**
 * @param {Blob} file
 * @param {(video: HTMLVideoElement) => void} chosen
 * @param {() => void} failed
 */
export function clipPanel(file, chosen, failed) {
  const video = h("video", { class: "clip", muted: true, playsinline: true, controls: true, preload: "auto" });
  video.src = URL.createObjectURL(file);
  video.muted = true;
  const use = h("button", { type: "button", disabled: true, onclick: () => chosen(video) }, t("Mark this frame"));
  const at = h("p", { class: "help num", role: "status" }, t("Reading the clip."));
  const tell = () => (at.textContent = t("{now} s of {all} s", { now: video.currentTime.toFixed(2), all: video.duration.toFixed(2) }));
  video.addEventListener("loadeddata", () => {
    use.disabled = false;
    tell();
  });
  video.addEventListener("seeked", tell);
  video.addEventListener("error", failed);
  const buttons = steps().map(([by, words]) =>
    h("button", { type: "button", class: "plain", onclick: () => step(video, by) }, words),
  );
  return h("div", { class: "stack" }, video, h("div", { class: "bar" }, buttons), at, h("div", { class: "bar" }, use));
}

function step(video, by) {
  video.pause();
  video.currentTime = Math.min(Math.max(video.currentTime + by * FRAME_S, 0), video.duration || 0);
}
