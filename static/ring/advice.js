// What the core says beside the judge's places: findings as sentences, and the sheets' own order to be opened.

import { fill, h } from "./dom.js";
import { findingWords, numberOf } from "./words.js";

const PAUSE_MS = 600;

/** @param {any} day @param {any} one the class @param {string} url */
export function adviceOf(day, one, url) {
  const numbers = new Map(one.entries.map((entry) => [String(entry.id), numberOf(entry)]));
  const words = h("ul", { class: "findings", "aria-live": "polite" });
  const order = h("ol", { class: "proposed" });
  const element = h("section", { class: "advice" }, h("h3", {}, "Beside it"), words,
    h("details", {}, h("summary", {}, "The order that the sheets would give"), h("p", { class: "help" }, "Computed from the marks and the standard's weights: advice, never a result."), order));
  let asked = "";
  let timer = 0;
  const update = (state) => {
    if (state === asked) return;
    asked = state;
    clearTimeout(timer);
    timer = setTimeout(ask, PAUSE_MS);
  };
  async function ask() {
    try {
      const response = await fetch(url, { headers: { Accept: "application/json" }, cache: "no-store", redirect: "error" });
      if (!response.ok) throw new Error(String(response.status));
      show(await response.json());
    } catch {
      fill(words, h("li", {}, "No network: the advice comes when it is back. Your places count without it."));
    }
  }
  function show({ proposed, ties, findings }) {
    const told = findings.map((finding) => findingWords(finding, day.sentences, numbers));
    const tied = ties.map((tie) => `Numbers ${tie.map((id) => numbers.get(String(id))).join(" and ")} are level on their sheets.`);
    const all = [...new Set([...told, ...tied])];
    fill(words, all.length ? all.map((text) => h("li", {}, text)) : h("li", {}, "Nothing to say: sheets, grades and places agree."));
    fill(order, proposed.map(({ entry, merit }) => h("li", {}, `Number ${numbers.get(String(entry))}, merit ${merit.toFixed(1)}`)));
  }
  return { element, update };
}
