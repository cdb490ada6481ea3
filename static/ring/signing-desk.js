// Signing: the results at the end of the class, the critiques apart from them and later.

import { fill, h, say } from "./dom.js";
import { t } from "./say.js";
import { mayBePlaced, missingOf, openCritiquesOf, remindersOf, writtenOf } from "./standing.js";
import { numberOf } from "./words.js";

/** @param {import("./book.js").Book} book @param {any} one the class @param {(text: string) => void} announce @param {boolean} maySign @param {() => void} read */
export function signingOf(book, one, announce, maySign, read) {
  const missing = h("ul", { class: "missing" });
  const results = h("button", { type: "button", class: "sign", onclick: async () => {
    await book.sign(one.sheet);
    announce(t("The results of this class are signed."));
  } });
  const state = h("p", { class: "signed" });
  const critiques = h("button", { type: "button", class: "sign", onclick: async () => {
    for (const entry of open()) await book.sign(entry.sheet);
    announce(t("The critiques of this class are signed."));
  } });
  const told = h("p", { class: "signed" });
  const written = () => writtenOf(book, one);
  const open = () => openCritiquesOf(book, one);
  const element = h("section", { class: "signing" }, h("h3", {}, t("Sign")), missing, results, state,
    h("button", { type: "button", class: "plain", onclick: read }, t("Read the critiques through")), critiques, told);
  const update = () => {
    const lacking = missingOf(book, one, numberOf);
    fill(missing, [...lacking, ...remindersOf(book, one)].map((text) => h("li", {}, text)));
    const signed = book.isSigned(one.sheet);
    const held = book.held(one.sheet);
    say(results, signed ? t("Sign the results again") : t("Sign the results of this class"));
    results.disabled = !maySign || lacking.length > 0 || (signed && !held);
    say(state, !maySign ? t("The judge signs.") : signed ? (held ? t("Signed. {n} later change is held until you sign again.|Signed. {n} later changes are held until you sign again.", { n: held }) : t("Results signed: the office can publish them.")) : "");
    const waiting = open().length;
    say(critiques, waiting ? t("Sign {n} critique|Sign {n} critiques", { n: waiting }) : t("Sign the critiques"));
    critiques.disabled = !maySign || !waiting;
    const silent = one.entries.filter((entry) => mayBePlaced(book, one, entry) && !written().includes(entry));
    say(told, silent.length ? t("Nothing written yet of number {numbers}.", { numbers: silent.map(numberOf).join(", ") }) : waiting ? "" : t("All critiques of this class are signed."));
  };
  return { element, update };
}
