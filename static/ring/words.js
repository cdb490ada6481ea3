// The page's words for what is set, shared by labels, the live region and undo.

import { inside, t } from "./say.js";

const FACT = /\{(\w+)\}/g;

/** @param {{low: string, high: string}} point @param {number} mark @returns {string} */
export function markWords(point, mark) {
  const end = mark < 0 ? point.low : point.high;
  switch (Math.abs(mark)) {
    case 0: return t("as the standard asks");
    case 1: return t("a little: {end}", { end });
    case 2: return t("clearly: {end}", { end });
    default: return t("far: {end}", { end });
  }
}

/** What an option of a point is called. @param {any} point @param {any} code */
export function optionWords(point, code) {
  return point.options?.find((option) => option.code === code)?.name ?? String(code).replaceAll("-", " ");
}

/** @param {any} point */
export function sectionWords(point) {
  return point.section_name ?? point.section.replaceAll("-", " ");
}

/** @param {{number: number|null, id: number}} entry @returns {string} */
export function numberOf(entry) {
  return entry.number === null ? t("entry {id}", { id: entry.id }) : String(entry.number);
}

/** @param {number} months @returns {string} */
export function age(months) {
  if (months < 24) return t("{n} month|{n} months", { n: months });
  const rest = months % 12;
  const years = t("{n} year|{n} years", { n: Math.floor(months / 12) });
  return rest ? `${years} ${t("{n} month|{n} months", { n: rest })}` : years;
}

/** @param {string} sex @returns {string} */
export function sexWords(sex) {
  return sex === "dog" ? t("dog") : t("bitch");
}

/** @param {{breed_name: string, sex: string, name: string}} one @returns {string} */
export function classWords(one) {
  const facts = { breed: one.breed_name, name: inside(one.name) };
  return one.sex === "dog" ? t("{breed}, dogs, {name} class", facts) : t("{breed}, bitches, {name} class", facts);
}

/** The state of a dog or a class, in a word. @param {string} standing */
export function standingWords(standing) {
  switch (standing) {
    case "absent": return t("absent");
    case "withdrawn": return t("withdrawn");
    case "excused": return t("excused");
    case "disqualified": return t("disqualified");
    case "not judged": return t("not judged");
    case "placed": return t("placed");
    case "graded": return t("graded");
    case "marked": return t("marked");
    case "waiting": return t("waiting");
    case "signed": return t("signed");
    case "in progress": return t("in progress");
    case "to come": return t("to come");
    case "ready": return t("ready");
    default: return standing;
  }
}

/**
 * A finding in words; a part in brackets is left out where a fact in it is missing.
 * @param {any} finding @param {Record<string, string>} sentences
 * @param {Map<string, string>} names catalogue numbers for entries, names for codes
 */
export function findingWords(finding, sentences, names) {
  const told = sentences[finding.code];
  if (!told) return `${finding.code.replaceAll("-", " ")}.`;
  const known = (part) => [...part.matchAll(FACT)].every(([, name]) => !isNothing(finding.facts[name]));
  return told.replace(/\[([^\]]*)\]/g, (_, part) => (known(part) ? part : "")).replace(FACT, (_, name) => wordsOf(finding.facts[name], names));
}

function isNothing(value) {
  return Array.isArray(value) ? !value.length : !value;
}

function wordsOf(value, names) {
  if (Array.isArray(value)) return value.map((each) => wordsOf(each, names)).join(", ");
  if (value === null || value === undefined) return t("nothing");
  return names.get(String(value)) ?? String(value).replaceAll("-", " ");
}

/** @param {import("./status.js").Status} status @returns {string} */
export function statusWords({ state, waiting, refused }) {
  const edits = t("{n} edit is safe on this tablet|{n} edits are safe on this tablet", { n: waiting });
  switch (state) {
    case "all-on-server": return t("Everything is on the server");
    case "waiting": return edits;
    case "sign-in": return waiting ? t("Sign in again: {edits}", { edits }) : t("Sign in again: everything written is kept");
    case "refused": return t("{n} refused, the text is kept", { n: refused });
    case "storage-full": return t("This tablet's storage is full: the last change is not safe");
    case "storage-failed": return t("This tablet cannot store: the last change is not safe");
    default: return t("Looking for the server");
  }
}
