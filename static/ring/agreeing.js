// Where the judge's own text and the marks no longer agree, point by point.

import { compose, phrases } from "./compose.js";
import { t } from "./say.js";

const SPEAKS = ["mark", "choice", "number", "yes", "set", "praise"];

/**
 * What the text does not say as the marks do, in words; empty where it agrees.
 *
 * A point is named where the text holds the words of another value of it, and where it was marked after the text was
 * written and the text does not hold its words. A text in words of its own is otherwise left alone.
 * @param {import("./book.js").Book} book
 * @param {string} key the sheet
 * @param {any} table the phrase table of the text's language
 * @param {any} sheet as the composer takes it
 * @param {string} text
 * @param {string} field of the text
 * @param {(code: string) => string} nameOf a point
 * @returns {string[]}
 */
export function disagreements(book, key, table, sheet, text, field, nameOf) {
  const said = plain(text);
  const written = writtenAt(book, key, field);
  const now = new Map(phrases(table, sheet).map((phrase) => [phrase.point, phrase]));
  const spoken = table.phrases[sheet.sex];
  return [...Object.keys(spoken).flatMap((code) => {
    const phrase = now.get(code);
    const later = markedAt(book, key, code) > written;
    if (!phrase) {
      const old = later ? longestIn(said, spoken[code]) : null;
      return old ? [t("{point}: the text says “{old}”, nothing is marked", { point: nameOf(code), old })] : [];
    }
    if (holds(said, phrase.short) || holds(said, phrase.full)) return contradicted(said, spoken[code], phrase, nameOf(code));
    const old = longestIn(said, spoken[code]);
    if (old) return [t("{point}: the text says “{old}”, the mark says “{now}”", { point: nameOf(code), old, now: phrase.short })];
    return later ? [t("{point}: marked since, “{now}”", { point: nameOf(code), now: phrase.short })] : [];
  }), ...misplaced(said, table, sheet)];
}

/** A place that the text names and the class does not give. */
function misplaced(said, table, sheet) {
  const places = Object.entries(table.places[sheet.sex]).filter(([place, words]) => place !== "further" && holds(said, words));
  return places.filter(([place]) => Number(place) !== sheet.place)
    .map(([, words]) => sheet.place ? t("place: the text says “{words}”, the class says {place}", { words, place: sheet.place }) : t("place: the text says “{words}”, no place is given", { words }));
}

/** Whether a longer wording of another value holds the present one inside it: "very steep croup" for "steep croup". */
function contradicted(said, wordings, phrase, name) {
  const old = longestIn(said, wordings);
  const mine = [phrase.short, phrase.full].map(plain);
  const other = old && !mine.includes(plain(old)) && mine.some((own) => plain(old).includes(own));
  return other ? [t("{point}: the text says “{old}”, the mark says “{now}”", { point: name, old, now: phrase.short })] : [];
}

/** The longest fixed wording of a point that the text holds. */
function longestIn(said, wordings) {
  const found = Object.values(wordings).flatMap(([short, full]) => [short, full])
    .filter((wording) => wording.includes(" ") && !wording.includes("{}") && holds(said, wording));
  return found.sort((a, b) => b.length - a.length)[0] ?? null;
}

function holds(said, wording) {
  const words = plain(wording);
  const at = said.indexOf(words);
  return at >= 0 && !/[\p{L}]/u.test(said[at - 1] ?? "") && !/[\p{L}]/u.test(said[at + words.length] ?? "");
}

function plain(text) {
  return text.toLowerCase().replace(/\s+/g, " ").replace(/[,;.]+$/, "").trim();
}

function markedAt(book, key, code) {
  return SPEAKS.map((kind) => writtenAt(book, key, `${kind}.${code}`)).sort().at(-1);
}

function writtenAt(book, key, field) {
  return book.edits(key, field).map((edit) => edit.made_at ?? "").sort().at(-1) ?? "";
}

/** The sentences of a text that the composer did not write. @param {any} table @param {any} sheet @param {string} text */
export function ownSentences(table, sheet, text) {
  const composed = new Set(compose(table, sheet).sentences.map(plain));
  return sentencesOf(text).filter((sentence) => !composed.has(plain(sentence)));
}

/** @param {string} text @returns {string[]} */
export function sentencesOf(text) {
  return text.split(/(?<=[.!?…])\s+|\n+/u).map((sentence) => sentence.trim()).filter(Boolean);
}
