// Photos of the dog in hand: where they are taken, what they read beside its marks, and that what waits gets sent.

import { drafts } from "../js/marking/drafts.js";
import { keepSending } from "../js/marking/sending.js";
import { fill, h, say } from "./dom.js";
import { latest } from "./latest.js";
import { inside, spoken, t } from "./say.js";
import { numberOf } from "./words.js";

/** Whether the page that takes photos is on this tablet; filled in as its worker answers. */
let isKept = false;
let keptNow = () => {};

/** Looks again at what the dog in hand has, once a photo has reached the server. */
let lookAgain = () => {};

/** Sends photos that wait, and has the page for taking them kept on this tablet. @param {(words: string) => void} announce */
export function startPhotos(announce) {
  keepSending((answer) => {
    if (answer.state === "sent") {
      announce(t("A photo that waited on this tablet is on the server now."));
      lookAgain();
    } else if (answer.state === "refused") announce(t("A photo was refused: {reason}", { reason: answer.reason }));
  });
  if (!("serviceWorker" in navigator)) return;
  navigator.serviceWorker.addEventListener("message", ({ data }) => {
    if (data !== "later-kept") return;
    isKept = true;
    keptNow();
  });
  navigator.serviceWorker.ready.then((kept) => kept.active?.postMessage("keep-later"));
}

/**
 * Puts the link under the head of the sheet, and each reading under the marks of the point that it bears on.
 * @param {import("./book.js").Book} book
 * @param {any} standard
 * @param {any} one the class
 * @param {any} entry
 * @param {{at: (path: string) => string, mayWrite: boolean, sheet: HTMLElement}} rest  the photo's readings stand in the sheet's rows
 */
export function photosOf(book, standard, one, entry, { at, mayWrite, sheet }) {
  const words = new URLSearchParams({ class: one.id, dog: entry.id, number: numberOf(entry), language: spoken() });
  // Where no worker keeps the pages, this one must stay open: it could not be opened again without network.
  const target = navigator.serviceWorker?.controller ? null : "_blank";
  const link = h("a", { class: "photo-link", href: `${at("photo/")}#${words}`, target }, t("Photo of this dog"));
  const offline = h("span", { class: "asked" });
  keptNow = () => say(offline, isKept ? t("also without network") : "");
  keptNow();
  const waiting = h("p", { class: "help", role: "status" });
  const list = h("ul", { class: "photo-readings" });
  const element = h("section", { class: "photos", "aria-label": t("Photos of this dog") }, link, offline, waiting, list);
  sheet.querySelector(".photo-place").append(element);
  const points = new Map(standard.points.map((point) => [point.code, point]));
  const propose = ({ point, mark: stop }) => {
    const field = `mark.${point}`;
    if (!mayWrite || stop === null || !points.has(point) || latest(book, entry.sheet, field) === stop) return null;
    const { name, low, high } = points.get(point);
    const said = stop === 0 ? t("as asked") : t("{end}, {n} step|{end}, {n} steps", { end: stop < 0 ? low : high, n: Math.abs(stop) });
    return h("button", { type: "button", class: "plain", onclick: async () => {
      await book.set(entry.sheet, field, stop, name);
      show();
    } }, t("Set {name}: {value}", { name: inside(name), value: said }));
  };
  let found = [];
  const show = () => {
    fill(list, found.map(({ address, view }) => h("li", {}, h("a", { href: `${address}?in=${spoken()}`, target }, t("The reading: {view}", { view })))));
    for (const each of sheet.querySelectorAll(".photo-said")) each.remove();
    for (const row of found.flatMap(({ rows }) => rows)) sheet.querySelector(`#point-${row.point}`)?.append(beside(row));
  };
  const beside = (row) => h("div", { class: "photo-said" },
    h("p", {}, t("On the photo: {name} {value} ({interval}), {reading}.", { ...row, name: inside(row.name) }),
      row.target ? h("span", { class: "asked" }, ` ${row.rule ? t("Rule of thumb: {target}.", row) : t("The standard: {target}.", row)}`) : null), propose(row));
  const look = async () => {
    const mine = (await drafts().catch(() => [])).filter((draft) => draft.send.startsWith(new URL(at(`dogs/${entry.id}/photos/`)).pathname));
    const sent = mine.filter((draft) => draft.state === "waiting").length;
    fill(waiting, sent ? t("{n} photo of this dog waits on this tablet for the network.|{n} photos of this dog wait on this tablet for the network.", { n: sent }) : null);
    const answer = await fetch(at(`dogs/${entry.id}/readings/?in=${spoken()}`), { headers: { Accept: "application/json" } }).catch(() => null);
    if (answer?.ok) found = (await answer.json()).photos;
    show();
  };
  lookAgain = look;
  look();
}
