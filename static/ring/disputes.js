// Two devices that disagree: both values side by side, and one tap that settles it.

import { fill, h } from "./dom.js";
import { t } from "./say.js";

/** @param {import("./book.js").Book} book @param {string} sheet @param {import("./said.js").Words} words */
export function disputeParts(book, sheet, words) {
  const element = h("div", { class: "disputes", role: "status" });
  let shown = "";
  const update = () => {
    const fields = book.disputes(sheet).filter((field) => field !== "signature");
    const key = fields.map((field) => field + book.disputed(sheet, field).map((edit) => edit.id)).join();
    if (key === shown) return;
    shown = key;
    fill(element, fields.map((field) => disputeOf(book, sheet, field, words)));
  };
  return { element, update };
}

function disputeOf(book, sheet, field, words) {
  const said = [...new Map(book.disputed(sheet, field).map((edit) => [JSON.stringify(edit.value), edit])).values()];
  return h("div", { class: "dispute" },
    h("p", {}, t("Two devices say different things of {what}. Which counts?", { what: words.name(field) })),
    h("div", { class: "options" }, said.map((edit) => h("button", {
      type: "button", class: "option", onclick: () => book.set(sheet, field, edit.value, words.name(field)),
    }, words.value(edit)))));
}
