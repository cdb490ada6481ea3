// What an edit says, in words: of a dog's sheet by the points of its standard, of a class card by its numbers.

import { t } from "./say.js";
import { classWords, markWords, numberOf, optionWords } from "./words.js";

/** @typedef {{name: (field: string) => string, value: (edit: {field: string, value: any}) => string}} Words */

/** @param {any[]} points @returns {Words} */
export function ofPoints(points) {
  const pointOf = (field) => points.find(({ code }) => code === field.slice(field.indexOf(".") + 1));
  return {
    name: (field) => pointOf(field)?.name ?? plain(field),
    value({ field, value }) {
      const point = pointOf(field);
      if (point?.kind === "two-sided" && typeof value === "number") return markWords(point, value);
      return plainValue(value, (code) => optionWords(point ?? {}, code));
    },
  };
}

/** @param {any} one the class @returns {Words} */
export function ofCard(one) {
  const number = (id) => numberOf(one.entries.find((entry) => String(entry.id) === String(id)) ?? { number: null, id });
  return {
    name(field) {
      const [kind, id] = field.split(".");
      return id ? ofDogWords(kind, number(id)) : ofClassWords(kind);
    },
    value({ field, value }) {
      if (Array.isArray(value)) return value.map(number).join(", ") || t("none");
      const grade = field.startsWith("grade.") && one.grades.find(({ code }) => code === value);
      return grade ? grade.name : plainValue(value);
    },
  };
}

/** Of whom a sheet of the day is, and how to say what is on it; null where it is none of this ring's. */
export function wordsOf(day, sheet) {
  for (const one of day.classes) {
    const entry = one.entries.find((each) => each.sheet === sheet);
    if (entry) return { about: t("Number {number}", { number: numberOf(entry) }), words: ofPoints(day.standards[one.breed].points) };
    if (one.sheet === sheet) return { about: classWords(one), words: ofCard(one) };
  }
  return null;
}

/** The words where nothing is known but the edit itself. @type {Words} */
export const ofItself = { name: plain, value: ({ value }) => plainValue(value) };

/** @param {string} code */
function plain(code) {
  return code.replaceAll(".", " ").replaceAll("-", " ");
}

/** @param {any} value @param {(code: any) => string} [nameOf] a code */
function plainValue(value, nameOf = (code) => String(code).replaceAll("-", " ")) {
  if (value === null) return t("nothing");
  if (typeof value === "boolean") return value ? t("yes") : t("no");
  return Array.isArray(value) ? value.map((each) => nameOf(each?.way ?? each)).join(", ") || t("none") : nameOf(value);
}

function ofDogWords(kind, number) {
  switch (kind) {
    case "grade": return t("the grade of number {number}", { number });
    case "reason": return t("the reason of number {number}", { number });
    case "presence": return t("the presence of number {number}", { number });
    default: return `${kind} ${number}`;
  }
}

function ofClassWords(kind) {
  switch (kind) {
    case "places": return t("the places");
    case "shortlist": return t("the shortlist");
    default: return kind;
  }
}
