// Written on the wrong dog: two sheets change numbers. Every value is written again, so no edit is lost, and one undo
// takes it back; what was signed before waits for a new signature.

import { h } from "./dom.js";
import { t } from "./say.js";
import { numberOf } from "./words.js";

/** @param {import("./book.js").Book} book @param {any} one the class @param {any} entry @param {(text: string) => void} announce */
export function swapOf(book, one, entry, announce) {
  const others = one.entries.filter((each) => each.id !== entry.id);
  if (!others.length) return null;
  const element = h("details", { class: "swap" }, h("summary", {}, t("Wrong dog?")),
    h("p", {}, t("All that is written of number {number}, grade and reason too, changes places with what is written of:", { number: numberOf(entry) })),
    h("div", { class: "options" }, others.map((other) => h("button", { type: "button", class: "option", onclick: () => swap(other) }, numberOf(other)))));
  async function swap(other) {
    await book.setAll(changesOf(book, one, entry, other), t("the swap of {one} and {other}", { one: numberOf(entry), other: numberOf(other) }));
    element.open = false;
    announce(t("Numbers {one} and {other} have changed sheets", { one: numberOf(entry), other: numberOf(other) }));
  }
  return element;
}

/** What must be written for two dogs to change sheets. */
export function changesOf(book, one, entry, other) {
  const fields = new Set([...book.values(entry.sheet).keys(), ...book.values(other.sheet).keys()]);
  fields.delete("signature");
  const written = (sheet, field) => book.value(sheet, field) ?? null;
  const ofSheets = [...fields].flatMap((field) => [
    { sheet: entry.sheet, field, value: written(other.sheet, field) },
    { sheet: other.sheet, field, value: written(entry.sheet, field) },
  ]);
  const ofCard = ["grade", "reason"].flatMap((kind) => [
    { sheet: one.sheet, field: `${kind}.${entry.id}`, value: written(one.sheet, `${kind}.${other.id}`) },
    { sheet: one.sheet, field: `${kind}.${other.id}`, value: written(one.sheet, `${kind}.${entry.id}`) },
  ]);
  return [...ofSheets, ...ofCard].filter(({ sheet, field, value }) => written(sheet, field) !== value);
}
