// The state of a dog and of a class, in one word each.

import { latest } from "./latest.js";
import { t } from "./say.js";

/** @typedef {"absent"|"withdrawn"|"excused"|"disqualified"|"placed"|"graded"|"marked"|"waiting"} Standing */

const WRITTEN = ["mark.", "choice.", "set.", "number.", "yes.", "praise."];
const ENDING = new Set(["disqualified", "cannot-be-judged"]);

/** @param {import("./book.js").Book} book @param {any} one the class @param {any} entry @returns {Standing} */
export function standingOf(book, one, entry) {
  const presence = book.value(one.sheet, `presence.${entry.id}`);
  if (presence && presence !== "present") return presence;
  const grade = book.value(one.sheet, `grade.${entry.id}`);
  if (ENDING.has(grade)) return grade === "disqualified" ? "disqualified" : "not judged";
  if (placesOf(book, one).includes(String(entry.id))) return "placed";
  if (grade) return "graded";
  return pointsOf(book, entry) ? "marked" : "waiting";
}

/** How many points a sheet speaks of. */
export function pointsOf(book, entry) {
  return [...book.values(entry.sheet).keys()].filter((field) => WRITTEN.some((kind) => field.startsWith(kind))).length;
}

/** @returns {string[]} entry ids as text, best first */
export function placesOf(book, one) {
  return book.value(one.sheet, "places") ?? [];
}

/** Whether a dog may be given a place: present, and not sent out. */
export function mayBePlaced(book, one, entry) {
  return !["absent", "withdrawn", "excused", "disqualified", "not judged"].includes(standingOf(book, one, entry));
}

/** The dogs something is written of. */
export function writtenOf(book, one) {
  return one.entries.filter((entry) => pointsOf(book, entry) || [...book.values(entry.sheet).keys()].some((field) => field === "remark" || field.startsWith("text.")));
}

/** Of those, the ones whose critique is not signed, or was changed since. */
export function openCritiquesOf(book, one) {
  return writtenOf(book, one).filter((entry) => !book.isSigned(entry.sheet) || book.held(entry.sheet));
}

/** What to think of before signing; none of it stands in the way, for the judge may place no dog at all. */
export function remindersOf(book, one) {
  const mayPlace = one.entries.some((entry) => mayBePlaced(book, one, entry));
  return mayPlace && !placesOf(book, one).length ? [t("No dog is placed: sign it so only if you place none.")] : [];
}

/** What is missing before the results of the class can be signed, in words; the signature takes in what waits for it. */
export function missingOf(book, one, numberOf) {
  const missing = [];
  const will = (kind, entry) => latest(book, one.sheet, `${kind}.${entry.id}`);
  const without = one.grades.length ? one.entries.filter((entry) => mayBePlaced(book, one, entry) && !will("grade", entry)) : [];
  if (without.length) missing.push(t("No grade yet: number {numbers}.", { numbers: without.map(numberOf).join(", ") }));
  const needing = new Set(one.grades.filter((grade) => grade.needs_reason).map((grade) => grade.code));
  const unexplained = one.entries.filter((entry) => needing.has(will("grade", entry)) && !will("reason", entry));
  if (unexplained.length) missing.push(t("The reason is missing: number {numbers}.", { numbers: unexplained.map(numberOf).join(", ") }));
  if (book.disputes(one.sheet).length) missing.push(t("Two devices disagree about this class."));
  return missing;
}
