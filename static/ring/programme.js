// The day's classes in order, each with its state in a word.

import { h, mark, say } from "./dom.js";
import { standingOf } from "./standing.js";
import { classWords } from "./words.js";

/** @param {import("./book.js").Book} book @param {any} day @param {(one: any) => void} open */
export function classListOf(book, day, open) {
  const rows = day.classes.filter((one) => one.entries.length).map((one) => {
    const state = h("span", { class: "state" });
    const element = h("li", {}, h("button", { type: "button", class: "class", onclick: () => open(one) },
      h("strong", {}, classWords(one)), h("span", {}, `${one.entries.length} dog${one.entries.length === 1 ? "" : "s"}`), state));
    return { one, element, state };
  });
  const element = h("section", { class: "programme" }, h("h2", {}, "Classes of this ring"),
    rows.length ? h("ol", {}, rows.map((row) => row.element)) : h("p", {}, "No class with dogs is planned in this ring. The show secretary gives a breed its ring."));
  const update = () => rows.forEach(({ one, state }) => {
    const word = book.isSigned(one.sheet) ? "signed" : one.entries.some((entry) => standingOf(book, one, entry) !== "waiting") ? "in progress" : "to come";
    say(state, word);
    mark(state, "data-standing", word);
  });
  return { element, update };
}
