// What the core says beside the judge's places: findings as sentences, and the sheets' own order to be opened.

import { fill, h } from "./dom.js";
import { decimal, inside, listed, t } from "./say.js";
import { namesOfCodes } from "./worded.js";
import { findingWords, numberOf } from "./words.js";

const PAUSE_MS = 600;

/**
 * @param {any} day
 * @param {any} one the class
 * @param {string} url
 * @param {(entry: string) => Element | undefined} beside where what is said of a placed number goes
 */
export function adviceOf(day, one, url, beside) {
  const numbers = new Map(one.entries.map((entry) => [String(entry.id), numberOf(entry)]));
  const names = new Map([...[...namesOfCodes(day, one.breed)].map(([code, name]) => [code, inside(name)]), ...numbers]);
  const words = h("ul", { class: "findings", "aria-live": "polite" });
  const order = h("ol", { class: "proposed" });
  const element = h("section", { class: "advice" }, h("h3", {}, t("Advice")), words,
    h("details", {}, h("summary", {}, t("The order that the sheets would give")), h("p", { class: "help" }, t("Computed from the marks and the standard's weights: advice, never a result.")), order));
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
      fill(words, h("li", {}, t("No network: the advice comes when it is back. Your places count without it.")));
    }
  }
  function show({ proposed, ties, findings }) {
    const told = [
      ...findings.map((finding) => [namedIn(finding.facts), findingWords(finding, day.sentences, names)]),
      ...ties.map((tie) => [tie, t("Numbers {numbers} are level on their sheets.", { numbers: listed(tie.map((id) => numbers.get(String(id)))) })]),
    ];
    const lists = new Map([[words, []], ...one.entries.map((entry) => [beside(String(entry.id)), []])]);
    for (const [about, text] of told) lists.get(about.map((id) => beside(String(id))).find(Boolean) ?? words).push(text);
    if (!told.length) lists.get(words).push(t("Nothing to say: sheets, grades and places agree."));
    for (const [list, texts] of lists) if (list) fill(list, [...new Set(texts)].map((text) => h("li", {}, text)));
    fill(order, proposed.map(({ entry, merit }) => h("li", {}, t("Number {number}, merit {merit}", { number: numbers.get(String(entry)), merit: decimal(merit) }))));
  }
  return { element, update };
}

/** The entries that a finding speaks of, the one it stands beside first. @returns {string[]} */
function namedIn(facts) {
  return facts.entries ?? (facts.entry ? [facts.entry] : []);
}
