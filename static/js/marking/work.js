// The marking page's work for one dog: start, mark, keep on the device, send, read.

import { fill, h } from "../../ring/dom.js";
import { t } from "../../ring/say.js";
import { Desk } from "./desk.js";
import { isSafe, keep, newId } from "./drafts.js";
import { keepSending } from "./sending.js";
import { startPanel } from "./start.js";

const noRoom = () => t("This device has no room to keep the photo and its marks: leave this page open until the server has them.");
const stateWords = () => ({
  waiting: t("The photo and its marks are safe on this device. They go to the server as soon as it can be reached."),
  "signed-out": t("The photo and its marks are safe on this device. Sign in again, and they go to the server."),
});

/** @param {any} page what is known of the dog and its views */
export function work(page) {
  const root = document.getElementById("marking");
  const status = document.getElementById("where");
  /** @type {string | null} the draft whose reading is to be opened once it is sent */
  let wanted = null;

  const send = keepSending((answer) => {
    if (answer.state === "sent" && answer.id === wanted) location.assign(answer.address);
    else if (answer.state === "sent") status.textContent = t("A photo that waited on this device is on the server now.");
    else status.textContent = answer.reason ?? (isSafe(answer.id) ? stateWords()[answer.state] : noRoom());
    if (answer.state === "refused" && answer.id === wanted) open();
  });

  function open() {
    fill(root, startPanel(page, begin, goOn));
  }

  async function begin(view, picture, takenOn) {
    const draft = {
      id: newId(), dogName: page.name, send: page.send, view, ...picture, places: {}, again: {}, takenOn,
      withersHeight: "", state: "marking", reason: "",
    };
    try {
      await keep(draft);
      status.textContent = t("The photo is safe on this device.");
    } catch {
      status.textContent = t("This device has no room to keep the photo: mark it in one go, with the network on.");
    }
    goOn(draft);
  }

  function goOn(draft) {
    const address = draft.bytes ? URL.createObjectURL(new Blob([draft.bytes], { type: "image/jpeg" })) : draft.picture;
    const finished = () => {
      wanted = draft.id;
      status.textContent = t("Sending.");
      fill(root, h("p", { class: "lead" }, isSafe(draft.id) ? t("Kept. The reading opens as soon as the server has the photo.") : noRoom()));
      send();
    };
    const unkept = () => { status.textContent = noRoom(); };
    fill(root, new Desk(page, draft, address, { finished, unkept }).element);
  }

  /** A photo that the server has already is marked anew: its picture is not sent again. */
  function markAnew({ id, picture, view, landmarks, ground, takenOn, height, width, high }) {
    const level = ground ? { "ground-1": ground[0], "ground-2": ground[1] } : {};
    goOn({
      id, picture, dogName: page.name, send: page.send, view, bytes: null, width, height: high,
      places: { ...level, ...landmarks }, again: {}, takenOn, withersHeight: height ?? "", state: "marking", reason: "",
    });
  }

  addEventListener("beforeunload", (leaving) => isSafe() || leaving.preventDefault());
  if (page.photo) markAnew(page.photo);
  else open();
}
