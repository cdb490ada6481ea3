// The first step: which view, and a photo or a clip from the camera or the device; what waits on this device.

import { fill, h } from "../../ring/dom.js";
import { t } from "../../ring/say.js";
import { clipPanel } from "./clip.js";
import { drafts, forget } from "./drafts.js";
import { frameOf, pictureOf } from "./picture.js";

const states = () => ({ marking: t("not finished"), waiting: t("waits for the network"), refused: t("refused by the server") });

/**
 * @param {any} page
 * @param {(view: string, picture: import("./picture.js").Picture, takenOn: string) => void} begin
 * @param {(draft: import("./drafts.js").Draft) => void} goOn
 */
export function startPanel(page, begin, goOn) {
  const told = h("p", { class: "error-text", role: "alert" });
  const clip = h("div", {});
  const waiting = h("div", {});
  const views = h("fieldset", { class: "views" }, h("legend", {}, t("How is the dog seen?")), page.views.map(viewChoice));
  const view = () => views.querySelector("input:checked").value;
  const take = async (file) => {
    fill(told);
    try {
      begin(view(), await pictureOf(file, page.longestSide), day(file));
    } catch (error) {
      told.textContent = error.message;
    }
  };
  const film = (file) => fill(clip, filmPanel(file, page.longestSide, (picture) => begin(view(), picture, day(file)), told));
  showWaiting(waiting, goOn);
  const doors = h(
    "div",
    { class: "doors-row" },
    door(t("Take a photo"), "image/*", take, { capture: "environment" }),
    door(t("Choose a photo"), "image/jpeg,image/png,image/webp,image/*", take),
    door(t("Choose a short clip"), "video/*", film),
  );
  const advice = h("p", { class: "help" }, t("From 3 m away or more, at a right angle to the dog, the camera at half the dog's height, level ground in the picture. A clip stays on this device: step through it and mark one frame. Where the photo was taken is left out."));
  return h("div", { class: "stack" }, waiting, views, doors, told, clip, advice);
}

function viewChoice({ code, name }, index) {
  return h("label", { class: "view" }, h("input", { type: "radio", name: "view", value: code, checked: index === 0 }), h("span", {}, name));
}

function door(words, accept, taken, more = {}) {
  const input = h("input", { type: "file", accept, class: "unseen", ...more });
  input.addEventListener("change", () => input.files[0] && taken(input.files[0]));
  return h("label", { class: "button door" }, input, words);
}

function filmPanel(file, longest, chosen, told) {
  const failed = () => (told.textContent = t("This device cannot play this clip: choose another, or a photo."));
  return clipPanel(file, async (video) => chosen(await frameOf(video, longest)), failed);
}

/** The day on which a file was made, as the device's own calendar has it. @param {File} file */
function day(file) {
  const made = new Date(file.lastModified);
  return [made.getFullYear(), made.getMonth() + 1, made.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
}

async function showWaiting(parent, goOn) {
  const found = await drafts();
  const items = found.map((one) =>
    h(
      "li",
      { class: "bar" },
      h("span", {}, `${t("{name}: {words}", { name: `${one.dogName}, ${t("{n} point|{n} points", { n: Object.keys(one.places).length })}`, words: states()[one.state] })}. ${one.reason}`),
      one.state !== "waiting" && h("button", { type: "button", class: "plain", onclick: () => goOn(one) }, t("Go on")),
      h("button", { type: "button", class: "plain", onclick: () => remove(one, parent, goOn) }, t("Remove")),
    ),
  );
  fill(parent, items.length > 0 && [h("h2", {}, t("On this device")), h("ul", { class: "waiting" }, items)]);
}

async function remove(one, parent, goOn) {
  if (!confirm(t("Remove this photo and its marks from this device? They are nowhere else."))) return;
  await forget(one.id);
  await showWaiting(parent, goOn);
}
