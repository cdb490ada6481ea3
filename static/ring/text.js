// The critique as it grows, written on the tablet from the marks, in the language the judge reads it in.

import { compose } from "./compose.js";
import { fieldKind } from "./fields.js";
import { h, say } from "./dom.js";
import { placesOf } from "./standing.js";

const PLURAL = { mark: "marks", choice: "choices", number: "numbers", yes: "yes" };

/** @param {import("./book.js").Book} book @param {any} day @param {any} one the class @param {any} entry */
export function textOf(book, day, one, entry) {
  const table = day.phrases?.[one.breed];
  const words = h("p", { class: "words", lang: "en" });
  const element = h("section", { class: "text", "aria-label": "The text as it grows" }, h("h3", {}, "The text as it grows"), words);
  const update = () => {
    const sheet = sheetOf(book, one, entry);
    element.hidden = !table || !sheet.said;
    if (!element.hidden) say(words, compose(table, sheet).text);
  };
  return { element, update };
}

/** The sheet as the composer takes it. */
function sheetOf(book, one, entry) {
  const values = book.values(entry.sheet);
  const sheet = { sex: entry.sex, marks: {}, choices: {}, numbers: {}, yes: {}, sets: {}, praise: [], said: 0 };
  for (const [field, value] of values) {
    const kind = fieldKind(field);
    const subject = field.slice(field.indexOf(".") + 1);
    if (kind in PLURAL) sheet[PLURAL[kind]][subject] = value;
    else if (kind === "praise" && value) sheet.praise.push(subject);
    else if (kind === "set" && subject === "teeth") sheet.teeth_missing = value;
    else if (kind === "set") sheet.sets[subject] = value;
    else continue;
    sheet.said += 1;
  }
  return { ...sheet, ...decided(book, one, entry) };
}

function decided(book, one, entry) {
  const place = placesOf(book, one).indexOf(String(entry.id)) + 1;
  const grade = book.value(one.sheet, `grade.${entry.id}`);
  const reason = book.value(one.sheet, `reason.${entry.id}`);
  return { ...(grade ? { grade } : {}), ...(reason ? { reason } : {}), ...(place ? { place } : {}) };
}
