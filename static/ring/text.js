// The critique as it grows, where the day brings the words for it.

import { h, say } from "./dom.js";

/** @param {import("./book.js").Book} book @param {any} day @param {any} one @param {any} entry */
export function textOf(book, day, one, entry) {
  const words = h("p", { class: "words", lang: "en" });
  const element = h("section", { class: "text", "aria-label": "The text as it grows" }, h("h3", {}, "The text as it grows"), words);
  element.hidden = true;
  const update = () => say(words, "");
  return { element, update };
}
