// One row a point: the word for too little, seven stops, the word for too much; a tap on the name praises.

import { h, mark, say } from "./dom.js";
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
  const set = (stop) => {
    const cleared = book.value(sheet, field) === stop;
    return book.set(sheet, field, cleared ? null : stop, point.name);
  };
  const said = h("span", { class: "said" });
  const name = praiseButton(book, sheet, point);
  const element = h("div", { class: "row", id: `point-${point.code}`, role: "group", "aria-label": point.name },
    h("div", { class: "name" }, name.element, said),
    h("span", { class: "end low" }, point.low),
    h("div", { class: "stops" }, stops),
    h("span", { class: "end high" }, point.high),
    asks(point));
  const update = () => {
    const value = book.value(sheet, field);
    stops.forEach((stop, index) => mark(stop, "aria-pressed", String(STOPS[index] === value)));
    mark(element, "data-set", value === undefined ? null : "yes");
    say(said, value === undefined ? "" : markWords(point, value));
    name.update();
  };
  return { element, update };
}

/** The point's name; a tap says that it is outstanding, another takes that back. @returns {Part} */
export function praiseButton(book, sheet, point) {
  const field = `praise.${point.code}`;
  const badge = h("span", { class: "badge" });
  const element = h("button", { type: "button", class: "praise", onclick: () => toggle() }, h("span", {}, point.name), badge);
  const toggle = () => book.set(sheet, field, book.value(sheet, field) ? null : true, `praise of ${point.name}`);
  const update = () => {
    const praised = Boolean(book.value(sheet, field));
    mark(element, "aria-pressed", String(praised));
    mark(element, "aria-label", `Praise ${point.name}`);
    say(badge, praised ? "praised" : "");
  };
  return { element, update };
}

/** What the standard asks, one tap away. */
export function asks(point) {
  return point.asks ? h("details", { class: "asks" }, h("summary", { "aria-label": `What the standard asks: ${point.name}` }, "?"), h("p", {}, point.asks)) : null;
}
