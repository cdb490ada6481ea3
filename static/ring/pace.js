// How far the class is, and how long a dog takes: a plain line that counts and does not nag.

import { h, say } from "./dom.js";
import { decimal, t } from "./say.js";
import { mayBePlaced, pointsOf } from "./standing.js";

// Common practice, no source: about three minutes a dog where each gets a written critique.
const PLANNED = 3;
const LEAST = 3;

/** @param {import("./book.js").Book} book @param {any} one the class */
export function paceOf(book, one) {
  const element = h("p", { class: "pace" });
  const update = () => say(element, words(book, one));
  return { element, update };
}

function words(book, one) {
  const present = one.entries.filter((entry) => mayBePlaced(book, one, entry));
  const done = present.filter((entry) => book.value(one.sheet, `grade.${entry.id}`) || (!one.grades.length && pointsOf(book, entry)));
  const counted = t("{done} of {n} dogs", { done: done.length, n: present.length });
  const pace = minutesPerDog(one.entries.flatMap((entry) => book.edits(one.sheet, `grade.${entry.id}`)));
  return pace === null ? counted : t("{counted}, {pace} minutes a dog (about {planned} planned)", { counted, pace: decimal(pace), planned: PLANNED });
}

/** From grade to grade, by the tablet's own clock: shown, never reckoned with. */
function minutesPerDog(edits) {
  const times = edits.map((edit) => Date.parse(edit.made_at)).filter(Number.isFinite).sort((a, b) => a - b);
  if (times.length < LEAST) return null;
  const minutes = (times.at(-1) - times[0]) / 60_000 / (times.length - 1);
  return minutes >= 0.1 && minutes < 60 ? minutes : null;
}
