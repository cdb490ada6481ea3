// The day's classes in order, each with its state in a word, and after each breed's last class its awards.

import { classesOf, decidedOf } from "./awards.js";
import { h, mark, say } from "./dom.js";
import { t } from "./say.js";
import { standingOf } from "./standing.js";
import { classWords, standingWords } from "./words.js";

/** @param {import("./book.js").Book} book @param {any} day @param {(one: any) => void} open @param {(breed: any) => void} openAwards */
export function classListOf(book, day, open, openAwards) {
  const awardsRow = (breed) => rowOf(t("{breed}: awards", { breed: breed.name }), "", () => openAwards(breed), () => awardsState(book, day, breed));
  const rows = day.classes.filter((one) => one.entries.length).flatMap((one) => {
    const breed = day.breeds?.find((each) => each.awards.length && each.classes.at(-1) === one.id);
    const dogs = t("{n} dog|{n} dogs", { n: one.entries.length });
    const ofClass = rowOf(classWords(one), dogs, () => open(one), () => classState(book, one));
    return breed ? [ofClass, awardsRow(breed)] : [ofClass];
  });
  const apart = (day.breeds ?? []).filter((each) => each.awards.length && !each.classes.length && each.elsewhere?.length);
  rows.push(...apart.map(awardsRow));
  const element = h("section", { class: "programme" }, h("h2", {}, t("Classes of this ring")),
    rows.length ? h("ol", {}, rows.map((row) => row.element)) : h("p", {}, t("No class with dogs is planned in this ring. The show secretary gives a breed its ring.")));
  const update = () => rows.forEach((row) => row.update());
  return { element, update };
}

function rowOf(words, count, open, stateOf) {
  const state = h("span", { class: "state" });
  const element = h("li", {}, h("button", { type: "button", class: "class", onclick: open }, h("strong", {}, words), h("span", {}, count), state));
  const update = () => {
    say(state, standingWords(stateOf()));
    mark(state, "data-standing", stateOf());
  };
  return { element, update };
}

function classState(book, one) {
  if (book.isSigned(one.sheet)) return "signed";
  return one.entries.some((entry) => standingOf(book, one, entry) !== "waiting") ? "in progress" : "to come";
}

function awardsState(book, day, breed) {
  if (book.isSigned(breed.sheet)) return "signed";
  if (decidedOf(book, breed).size) return "in progress";
  const isReady = classesOf(day, breed).every((one) => book.isSigned(one.sheet)) && (breed.elsewhere ?? []).every((one) => one.signed);
  return isReady ? "ready" : "to come";
}
