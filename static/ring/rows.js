// One row a point: the word for too little, seven stops, the word for too much; a tap on the name praises.

import { h, mark, say } from "./dom.js";
import { latest, press, waits } from "./latest.js";
import { ofPoints } from "./said.js";
import { t } from "./say.js";
import { markSign } from "./symbols.js";
import { markWords } from "./words.js";

/** @typedef {{element: HTMLElement, update: () => void}} Part */

const STOPS = [-3, -2, -1, 0, 1, 2, 3];

/**
 * @param {import("./book.js").Book} book
 * @param {string} sheet
 * @param {any} point
 * @returns {Part}
 */
export function twoSidedRow(book, sheet, point) {
  const field = `mark.${point.code}`;
  const stops = STOPS.map((stop) => h("button", {
    type: "button", class: "stop", "aria-label": `${point.name}, ${markWords(point, stop)}`,
    onclick: () => set(stop),
  }, markSign(stop)));
  const set = (stop) => book.set(sheet, field, latest(book, sheet, field) === stop ? null : stop, point.name);
  const said = h("span", { class: "said" });
  const name = praiseButton(book, sheet, point);
  const element = h("div", { class: "row", id: `point-${point.code}`, role: "group", "aria-label": point.name },
    h("div", { class: "name" }, name.element, said),
    h("span", { class: "end low" }, point.low),
    h("div", { class: "stops" }, stops),
    h("span", { class: "end high" }, point.high),
    asks(point));
  const update = () => {
    const [now, then] = [book.value(sheet, field), latest(book, sheet, field)];
    stops.forEach((stop, index) => press(stop, STOPS[index] === now, STOPS[index] === then));
    mark(element, "data-set", now === undefined ? null : "yes");
    mark(element, "data-waits", waits(book, sheet, field) ? "yes" : null);
    say(said, waitingWords(book, sheet, point, field) || (now === undefined ? "" : markWords(point, now)));
    name.update();
  };
  return { element, update };
}

/** The point's name; a tap says that it is outstanding, another takes that back. @returns {Part} */
export function praiseButton(book, sheet, point) {
  const field = `praise.${point.code}`;
  const badge = h("span", { class: "badge" });
  const element = h("button", { type: "button", class: "praise", onclick: () => toggle() }, h("span", {}, point.name), badge);
  const toggle = () => book.set(sheet, field, latest(book, sheet, field) ? null : true, t("praise of {name}", point));
  const update = () => {
    const [now, then] = [Boolean(book.value(sheet, field)), Boolean(latest(book, sheet, field))];
    press(element, now, then);
    mark(element, "aria-label", t("Praise {name}", point));
    say(badge, now === then ? (now ? t("praised") : "") : then ? t("praise waits") : t("no praise waits"));
  };
  return { element, update };
}

/** "waits: far: abrupt" where a change of the field waits for a signature. */
export function waitingWords(book, sheet, point, field) {
  const value = latest(book, sheet, field) ?? null;
  return waits(book, sheet, field) ? t("waits: {value}", { value: ofPoints([point]).value({ field, value }) }) : "";
}

/** What the standard asks, one tap away. */
export function asks(point) {
  return point.asks ? h("details", { class: "asks" }, h("summary", { "aria-label": t("What the standard asks: {name}", point) }, "?"), h("p", { lang: "en" }, point.asks)) : null;
}
