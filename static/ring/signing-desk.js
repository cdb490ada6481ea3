// Signing: the results at the end of the class, the critiques apart from them and later.

import { fill, h, say } from "./dom.js";
import { mayBePlaced, missingOf, openCritiquesOf, remindersOf, writtenOf } from "./standing.js";
import { numberOf } from "./words.js";

/** @param {import("./book.js").Book} book @param {any} one the class @param {(text: string) => void} announce @param {boolean} maySign @param {() => void} read */
export function signingOf(book, one, announce, maySign, read) {
  const missing = h("ul", { class: "missing" });
  const results = h("button", { type: "button", class: "sign", onclick: async () => {
    await book.sign(one.sheet);
    announce("The results of this class are signed.");
  } });
  const state = h("p", { class: "signed" });
  const critiques = h("button", { type: "button", class: "sign", onclick: async () => {
    for (const entry of open()) await book.sign(entry.sheet);
    announce("The critiques of this class are signed.");
  } });
  const told = h("p", { class: "signed" });
  const written = () => writtenOf(book, one);
  const open = () => openCritiquesOf(book, one);
  const element = h("section", { class: "signing" }, h("h3", {}, "Sign"), missing, results, state,
    h("button", { type: "button", class: "plain", onclick: read }, "Read the critiques through"), critiques, told);
  const update = () => {
    const lacking = missingOf(book, one, numberOf);
    fill(missing, [...lacking, ...remindersOf(book, one)].map((text) => h("li", {}, text)));
    const signed = book.isSigned(one.sheet);
    const held = book.held(one.sheet);
    say(results, signed ? "Sign the results again" : "Sign the results of this class");
    results.disabled = !maySign || lacking.length > 0 || (signed && !held);
    say(state, !maySign ? "The judge signs." : signed ? (held ? `Signed. ${held} later change${held === 1 ? " is" : "s are"} held until you sign again.` : "Results signed: the office can publish them.") : "");
    const waiting = open().length;
    say(critiques, waiting ? `Sign ${waiting} critique${waiting === 1 ? "" : "s"}` : "Sign the critiques");
    critiques.disabled = !maySign || !waiting;
    const silent = one.entries.filter((entry) => mayBePlaced(book, one, entry) && !written().includes(entry));
    say(told, silent.length ? `Nothing written yet of number ${silent.map(numberOf).join(", ")}.` : waiting ? "" : "All critiques of this class are signed.");
  };
  return { element, update };
}
