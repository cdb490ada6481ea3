// After a signature a change waits beside what is signed until it is signed too: what waits, and how a control shows it.

import { mark } from "./dom.js";

/**
 * What a field says once the changes that wait are signed; undefined where nothing is set.
 * @param {import("./book.js").Book} book
 * @param {string} sheet
 * @param {string} field
 */
export function latest(book, sheet, field) {
  const [newest] = book.waiting(sheet, field);
  return newest ? newest.value ?? undefined : book.value(sheet, field);
}

/** Whether a change of the field waits for a signature. */
export function waits(book, sheet, field) {
  return book.waiting(sheet, field).length > 0;
}

/**
 * A button that is pressed where its value counts, and marked as waiting where it will count, or no more, once signed.
 * @param {Element} button
 * @param {boolean} counts
 * @param {boolean} [will] count, once what waits is signed
 */
export function press(button, counts, will = counts) {
  mark(button, "aria-pressed", String(counts));
  mark(button, "data-waits", will === counts ? null : will ? "to-count" : "to-go");
}
