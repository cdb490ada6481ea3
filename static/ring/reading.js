// Reading the critiques of a class through and signing them, apart from the results.

import { compose } from "./compose.js";
import { fill, h, mark, say } from "./dom.js";
import { t } from "./say.js";
import { mayBePlaced, openCritiquesOf, placesOf, pointsOf } from "./standing.js";
import { disagreeing, saidOf } from "./text.js";
import { TONGUES, tongueChoice } from "./tongue.js";
import { numberOf, standingWords } from "./words.js";

/**
 * @param {import("./book.js").Book} book @param {any} day @param {any} one the class @param {import("./tongue.js").Tongue} tongue
 * @param {{edit: (entry: any) => void, back: () => void, announce: (text: string) => void, maySign: boolean}} page
 */
export function readingOf(book, day, one, tongue, page) {
  const shown = [...one.entries].sort((a, b) => rank(book, one, a) - rank(book, one, b));
  const items = shown.map((entry) => itemOf(book, day, one, entry, tongue, page));
  const all = h("button", { type: "button", class: "sign", onclick: async () => {
    for (const entry of openCritiquesOf(book, one)) await book.sign(entry.sheet);
    page.announce(t("The critiques of this class are signed."));
  } });
  const state = h("p", { class: "signed" });
  const element = h("section", { class: "lineup reading", "aria-label": t("Critiques of this class") },
    h("h2", { tabindex: "-1" }, t("Critiques")),
    h("p", { class: "help" }, t("Read them through, then sign. The results are signed on their own and need not wait for this.")),
    tongueChoice(tongue), h("div", { class: "critiques" }, items.map((item) => item.element)),
    h("section", { class: "signing" }, h("h3", {}, t("Sign the critiques")), all, state),
    h("footer", { class: "foot" }, h("div", { class: "actions" }, h("span", { class: "gap" }), h("button", { type: "button", onclick: page.back }, t("Back to the line-up")))));
  const update = () => {
    items.forEach((item) => item.update());
    const open = openCritiquesOf(book, one).length;
    say(all, open ? t("Sign {n} critique|Sign {n} critiques", { n: open }) : t("Sign the critiques"));
    all.disabled = !page.maySign || !open;
    say(state, page.maySign ? (open ? "" : t("Nothing waits to be signed.")) : t("The judge signs."));
  };
  tongue.addEventListener("changed", () => element.isConnected && update());
  return { element, update };
}

/** Placed dogs first, in their order; the others by number. */
function rank(book, one, entry) {
  const place = placesOf(book, one).indexOf(String(entry.id));
  return place >= 0 ? place : 1000 + one.entries.indexOf(entry);
}

function itemOf(book, day, one, entry, tongue, page) {
  const told = h("p", { class: "told" });
  const words = h("p", { class: "words" });
  const remark = h("p", { class: "words" });
  const points = h("ul", { class: "missing" });
  const state = h("p", { class: "signed" });
  const sign = h("button", { type: "button", class: "plain", onclick: async () => {
    await book.sign(entry.sheet);
    page.announce(t("The critique of number {number} is signed.", { number: numberOf(entry) }));
  } }, t("Sign this one"));
  const id = `critique-${entry.id}`;
  const element = h("article", { class: "one-critique", "aria-labelledby": id },
    h("h3", { id }, h("span", { class: "number" }, numberOf(entry)), told), words, remark, points, state,
    h("div", { class: "options" }, h("button", { type: "button", class: "plain", "aria-label": t("Change the sheet of number {number}", { number: numberOf(entry) }), onclick: () => page.edit(entry) }, t("Change it")), sign));
  const update = () => {
    const text = textNow(book, one, entry, tongue);
    say(told, decidedWords(book, one, entry));
    mark(words, "lang", text.words ? text.language : null);
    say(words, text.words || t("Nothing is written of this dog yet."));
    say(remark, book.value(entry.sheet, "remark") ?? "");
    fill(points, disagreeing(book, day, one, entry, tongue.tableOf(one.breed), tongue.code).map((found) => h("li", {}, found)));
    const isOpen = openCritiquesOf(book, one).includes(entry);
    say(state, stateWords(book, entry, text, isOpen));
    mark(element, "data-signed", isOpen || !text.words ? null : "yes");
    sign.hidden = !page.maySign || !isOpen;
  };
  return { element, update };
}

/** The judge's own text where there is one, else the composed one. */
function textNow(book, one, entry, tongue) {
  const own = book.value(entry.sheet, `text.${tongue.code}`);
  if (own) return { words: own, language: tongue.code, isOwn: true };
  const table = tongue.tableOf(one.breed);
  const sheet = saidOf(book, one, entry);
  const words = table && (pointsOf(book, entry) || sheet.reason) ? compose(table, sheet).text : "";
  return { words, language: table?.language ?? "en", isOwn: false };
}

function decidedWords(book, one, entry) {
  const presence = book.value(one.sheet, `presence.${entry.id}`);
  if (presence && presence !== "present") return standingWords(presence);
  const code = book.value(one.sheet, `grade.${entry.id}`);
  const grade = one.grades.find((each) => each.code === code)?.name;
  const place = placesOf(book, one).indexOf(String(entry.id)) + 1;
  return [grade, place ? t("place {place}", { place }) : null].filter(Boolean).join(", ") || (mayBePlaced(book, one, entry) ? t("no grade yet") : "");
}

function stateWords(book, entry, text, isOpen) {
  const held = book.held(entry.sheet);
  const whose = text.isOwn ? t("Your own text, {language}.", { language: TONGUES[text.language] }) : "";
  if (!text.words && !isOpen) return "";
  const signed = !book.isSigned(entry.sheet) ? t("Not signed.") : held ? t("Signed; {n} later change held until you sign again.|Signed; {n} later changes held until you sign again.", { n: held }) : t("Signed.");
  return [whose, signed].filter(Boolean).join(" ");
}
