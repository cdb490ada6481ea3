// What a field holds, and when two of its values are the same value.

import { canonical } from "./digest.js";

const WITH_SUBJECT = new Set([
  "mark", "praise", "choice", "set", "number", "yes", "text", "presence", "grade", "reason", "award",
]);
const ALONE = new Set(["remark", "signature", "shortlist", "places"]);
const UNORDERED = new Set(["set", "shortlist"]);

/**
 * `mark.croup` is a "mark", `places` are "places"; a field we do not know is "other".
 * @param {string} field
 * @returns {string}
 */
export function fieldKind(field) {
  const dot = field.indexOf(".");
  const kind = dot < 0 ? field : field.slice(0, dot);
  const known = dot < 0 ? ALONE.has(kind) : WITH_SUBJECT.has(kind) && dot + 1 < field.length;
  return known ? kind : "other";
}

/**
 * A text that is equal for equal values of a field: `set.*`, `shortlist` and the lists of a signature are unordered
 * and hold each member once, every other list is ordered; true is no number, 1 and 1.0 are one, null is a value.
 * @param {string} field
 * @param {any} value
 * @returns {string}
 */
export function valueKey(field, value) {
  const kind = fieldKind(field);
  if (UNORDERED.has(kind) && Array.isArray(value)) return `set${unordered(value)}`;
  return kind === "signature" ? signatureKey(value) : canonical(value);
}

/** A plain list of ids says the same as an object that covers them. @param {any} value */
function signatureKey(value) {
  const said = Array.isArray(value) ? { covers: value } : value;
  if (said === null || typeof said !== "object") return canonical(said);
  return canonical(Object.keys(said).sort().map((name) => [name, unordered(said[name])]));
}

/** @param {any} value */
function unordered(value) {
  return Array.isArray(value) ? `[${[...new Set(value.map(canonical))].sort().join(",")}]` : canonical(value);
}
