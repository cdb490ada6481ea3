// Two devices that disagree: both values side by side, and one tap that settles it.

import { fill, h } from "./dom.js";
import { markWords } from "./words.js";

/** @param {import("./book.js").Book} book @param {string} sheet @param {any[]} points */
export function disputeParts(book, sheet, points) {
  const element = h("div", { class: "disputes", role: "status" });
  let shown = "";
  const update = () => {
    const fields = book.disputes(sheet).filter((field) => field !== "signature");
    const key = fields.map((field) => field + book.disputed(sheet, field).map((edit) => edit.id)).join();
    if (key === shown) return;
    shown = key;
    fill(element, fields.map((field) => disputeOf(book, sheet, field, points)));
  };
  return { element, update };
}

function disputeOf(book, sheet, field, points) {
  const code = field.slice(field.indexOf(".") + 1);
  const point = points.find((one) => one.code === code);
  const name = point?.name ?? field.replaceAll(".", " ");
  const said = [...new Map(book.disputed(sheet, field).map((edit) => [JSON.stringify(edit.value), edit])).values()];
  return h("div", { class: "dispute" },
    h("p", {}, `Two devices say different things of ${name}. Which counts?`),
    h("div", { class: "options" }, said.map((edit) => h("button", {
      type: "button", class: "option", onclick: () => book.set(sheet, field, edit.value, name),
    }, valueWords(point, edit)))));
}

function valueWords(point, edit) {
  if (edit.value === null) return "nothing";
  if (point?.kind === "two-sided" && typeof edit.value === "number") return markWords(point, edit.value);
  return Array.isArray(edit.value) ? edit.value.join(", ") || "none" : String(edit.value).replaceAll("-", " ");
}
