// Where the tablet cannot keep a change: said over the whole page, with what was not kept, to try again or to copy.

import { fill, h, say } from "./dom.js";
import { ofItself, wordsOf } from "./said.js";
import { t } from "./say.js";

/** @param {import("./book.js").Book} book @param {() => any} day as the page shows it now */
export function troubleOf(book, day) {
  /** @type {Map<string, {sheet: string, field: string, value: any}>} the last value of each field that was not kept */
  const lost = new Map();
  const text = h("textarea", { id: "not-kept", readonly: true, rows: 6 });
  const told = h("p", { role: "status" });
  const element = h("dialog", { class: "trouble", "aria-labelledby": "trouble" });
  /** In the language of the moment. */
  const written = () => [
    h("h2", { id: "trouble" }, t("This tablet could not keep your last change")),
    h("p", {}, t("Its storage is full or broken. What you wrote before is kept as it was. Make room on the tablet and try again, or copy this and go on with another tablet or on paper.")),
    h("label", { for: "not-kept" }, t("Not kept")), text, told,
    h("div", { class: "options" }, h("button", { type: "button", onclick: () => again() }, t("Try again")),
      h("button", { type: "button", class: "plain", onclick: () => copy() }, t("Copy it")),
      h("button", { type: "button", class: "plain", onclick: () => element.close() }, t("Go on without it"))),
  ];
  async function again() {
    const changes = [...lost.values()];
    await book.setAll(changes, t("what was kept late"));
    lost.clear();
    element.close();
  }
  async function copy() {
    text.select();
    // Without a secure address there is no clipboard to write to; the text stands selected for the finger.
    await navigator.clipboard?.writeText(text.value);
    say(told, navigator.clipboard ? t("Copied.") : t("Selected: copy it by hand."));
  }
  element.addEventListener("close", () => lost.clear());
  book.addEventListener("not-kept", ({ detail }) => {
    for (const change of detail) lost.set(`${change.sheet} ${change.field}`, change);
    text.value = [...lost.values()].map((change) => lineOf(day(), change)).join("\n");
    say(told, "");
    if (element.open) return;
    fill(element, written());
    element.showModal();
  });
  return { element };
}

/** "Number 12, croup: far: steep". */
function lineOf(day, change) {
  const { about, words } = wordsOf(day, change.sheet) ?? { about: change.sheet, words: ofItself };
  return t("{name}: {words}", { name: `${about}, ${words.name(change.field)}`, words: words.value(change) });
}
