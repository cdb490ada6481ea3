// Typed text: a draft is on the tablet within 150 ms, and becomes one edit when the field is left or after 2 s.

import { h, mark } from "./dom.js";
import { latest, waits } from "./latest.js";
import { inside } from "./say.js";

const DRAFT_MS = 150;
const PAUSE_MS = 2000;

/**
 * @param {import("./book.js").Book} book
 * @param {import("./store.js").Store} store
 * @param {{sheet: string, field: string, label: string, rows?: number, lang?: string, left?: (text: string) => void}} options
 *   `left` hears the whole text when the field is left
 */
export function typedField(book, store, { sheet, field, label, rows = 2, lang = "", left = () => {} }) {
  const id = `typed-${field.replaceAll(".", "-")}`;
  let drafting = 0;
  let pausing = 0;
  const kept = () => latest(book, sheet, field) ?? "";
  const area = h("textarea", { id, rows, maxlength: 4000, lang: lang || null, oninput: () => typed(), onblur: () => {
    keep();
    left(area.value.trim());
  } });
  const typed = () => {
    clearTimeout(drafting);
    clearTimeout(pausing);
    drafting = setTimeout(() => store.draft(sheet, field, area.value, kept()), DRAFT_MS);
    pausing = setTimeout(keep, PAUSE_MS);
  };
  const keep = () => {
    clearTimeout(drafting);
    clearTimeout(pausing);
    const text = area.value.trim();
    if (text !== kept()) book.set(sheet, field, text || null, inside(label));
  };
  /** Puts a sentence behind what stands there. @param {string} text */
  const insert = (text) => {
    area.value = [area.value.trim(), text].filter(Boolean).join(" ");
    keep();
  };
  addEventListener("pagehide", () => area.isConnected && keep());
  // What was typed and not yet kept when the tablet died is brought back, where nobody has written the field since.
  store.drafts(sheet).then((drafts) => {
    const draft = drafts.find((one) => one.field === field);
    if (draft && (draft.over ?? "") === kept() && document.activeElement !== area) {
      area.value = draft.value;
      keep();
    }
  });
  const element = h("div", { class: "typed" }, h("label", { for: id }, label), area);
  const update = () => {
    if (document.activeElement !== area) area.value = kept();
    mark(element, "data-set", book.value(sheet, field) ? "yes" : null);
    mark(element, "data-waits", waits(book, sheet, field) ? "yes" : null);
  };
  return { element, update, insert };
}
