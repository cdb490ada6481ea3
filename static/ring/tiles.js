// The class as a row of numbers, each with its state in a word.

import { h, mark, say } from "./dom.js";
import { t } from "./say.js";
import { standingOf } from "./standing.js";
import { numberOf, standingWords } from "./words.js";

/**
 * @param {import("./book.js").Book} book
 * @param {any} one the class
 * @param {(entry: any) => void} open
 */
export function tilesOf(book, one, open) {
  const tiles = one.entries.map((entry) => {
    const state = h("span", { class: "state" });
    const element = h("button", { type: "button", class: "tile", onclick: () => open(entry) }, h("span", { class: "number" }, numberOf(entry)), state);
    return { entry, element, state };
  });
  const element = h("nav", { class: "tiles", "aria-label": t("Dogs of the class") }, tiles.map((tile) => tile.element));
  const update = (inHand) => tiles.forEach(({ entry, element, state }) => {
    const standing = standingOf(book, one, entry);
    const here = inHand?.id === entry.id;
    say(state, here && ["waiting", "marked"].includes(standing) ? t("in hand") : standingWords(standing));
    mark(element, "data-standing", standing);
    mark(element, "aria-current", here ? "true" : null);
  });
  return { element, update };
}
