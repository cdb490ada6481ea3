// One award: who competes and why, the numbers to tap, withheld or undecided, and what is to be said of it.

import { competing, checked, waitsFor } from "./candidates.js";
import { fill, h, mark, say } from "./dom.js";
import { latest, press } from "./latest.js";
import { competesWords, placeWords } from "./competes.js";
import { apart, t } from "./say.js";
import { findingWords } from "./words.js";

/**
 * `others` are all the entries that an award could be given to, those that do not compete among them; a dog in several
 * classes is one tile, so entries are told apart by `dogOf`.
 * @typedef {{book: import("./book.js").Book, breed: any, classes: any[], numbers: Map<string, string>, dogOf: (id: string) => string, classNames: Record<string, string>,
 *            sentences: any, announce: (text: string) => void, others: (one: any) => string[]}} Desk
 * @typedef {{standings: import("./candidates.js").Standing[], decided: import("./candidates.js").Decided}} Now
 */

/** @param {Desk} desk @param {any} one the award as the breed offers it */
export function blockOf(desk, one) {
  const decision = decisionOf(desk, one);
  const words = wordsOf(desk, one, decision);
  const state = h("span", { class: "state" });
  const notes = ["help", "wrong"].map((kind) => h("p", { class: kind }));
  const findings = h("ul", { class: "findings", "aria-live": "polite" });
  const tiles = tilesOf(desk, one, decision);
  const withhold = one.may_be_withheld ? h("button", { type: "button", class: "option", onclick: () => decision.toggle(false) }, t("Withheld")) : null;
  const clear = h("button", { type: "button", class: "option", onclick: () => decision.set(null) }, t("Undecided"));
  const choices = h("div", { class: "choices" }, tiles.element, h("div", { class: "options" }, withhold, clear, tiles.another));
  const element = h("section", { class: "award", "aria-label": awardWords(one) },
    h("h4", {}, h("span", {}, one.name), state), h("p", { class: "competes" }, competesWords(desk.breed, desk.classes, one)), notes, choices, findings);
  /** @param {Now} now */
  const update = (now) => {
    const waits = waitsFor(desk.breed.awards, one, now.decided);
    const ids = toShow(desk, one, decision, now, waits);
    tiles.update(ids, now);
    choices.hidden = !ids.length && waits.length > 0 && decision.chosen() === null;
    say(state, words.state(now));
    mark(element, "data-state", decision.said().length ? "disputed" : typeOf(now.decided.get(one.code)));
    say(notes[0], words.waits(waits) || (ids.length ? "" : t("No number competes so far.")));
    say(notes[1], words.dispute());
    const finding = words.finding(now);
    if (findings.textContent !== finding) fill(findings, finding ? h("li", {}, finding) : null);
    if (withhold) press(withhold, now.decided.get(one.code) === false, !decision.said().length && decision.chosen() === false);
    clear.hidden = decision.chosen() === null && !decision.said().length;
  };
  return { element, update };
}

/** What is decided of an award, by whom it is disputed, what waits for a new signature, and how to decide it. */
function decisionOf({ book, breed, numbers, dogOf, announce }, one) {
  const field = `award.${one.code}`;
  const said = () => book.disputed(breed.sheet, field).map((edit) => edit.value);
  const waiting = () => [...new Set(book.waiting(breed.sheet, field).map((edit) => edit.value))];
  const chosen = () => latest(book, breed.sheet, field) ?? null;
  const set = (value) => {
    announce(t("{name}: {words}", { name: awardWords(one), words: decisionWords(value, numbers) }));
    return book.set(breed.sheet, field, value, awardWords(one));
  };
  const is = (value, id) => typeof value === "string" && dogOf(value) === dogOf(id);
  /** A second tap takes the decision back. */
  const toggle = (value) => set(!said().length && (chosen() === value || is(chosen(), value)) ? null : value);
  return { said, waiting, chosen, set, toggle, is };
}

/** The numbers to tap: who competes, once that can be told, and whoever is named already. */
function toShow({ breed, dogOf }, one, decision, { standings, decided }, waits) {
  const unknown = waits.some(({ award }) => one.lines.some((line) => [line.second_to, line.other_sex_than].includes(award)));
  const named = [decided.get(one.code), ...decision.waiting(), ...decision.said()].filter((id) => typeof id === "string");
  return onceADog([...(unknown ? [] : competing(breed.awards, one, standings, decided)), ...named], dogOf);
}

/** @param {string[]} ids @param {(id: string) => string} dogOf @returns {string[]} of each dog its first entry */
export function onceADog(ids, dogOf) {
  const dogs = ids.map(dogOf);
  return ids.filter((_, at) => dogs.indexOf(dogs[at]) === at);
}

/** @param {Desk} desk */
function tilesOf(desk, one, decision) {
  const element = h("div", { class: "choices" });
  const rest = h("div", { class: "choices" });
  const another = h("details", { class: "another", ontoggle: () => fill(rest, another.open ? desk.others(one).map((id) => tileOf(id, "any")) : []) },
    h("summary", {}, t("Another number")), h("p", { class: "help" }, t("Your word decides, also for a number that does not compete under the rules.")), rest);
  const tileOf = (id, where) => h("button", { type: "button", class: "tile", id: `${where}-${one.code}-${id}`, "data-entry": id, onclick: () => decision.toggle(id) },
    h("span", { class: "number" }, desk.numbers.get(id) ?? "–"), h("span", { class: "state" }));
  let drawn = "";
  function draw(ids) {
    if (ids.join() === drawn) return;
    drawn = ids.join();
    const focused = document.activeElement?.id;
    fill(element, ids.map((id) => tileOf(id, "for")));
    if (focused?.startsWith(`for-${one.code}-`)) document.getElementById(focused)?.focus();
  }
  const update = (ids, now) => {
    draw(ids);
    for (const tile of [...element.children, ...rest.children]) {
      const id = tile.dataset.entry;
      say(tile.lastChild, fromWords(desk, one, id, now));
      press(tile, decision.is(now.decided.get(one.code), id), !decision.said().length && decision.is(decision.chosen(), id));
    }
  };
  return { element, another, update };
}

/** "open, first · CACIB": the classes a number comes from, and what it has won that lets it compete. */
function fromWords(desk, one, id, { standings, decided }) {
  const { breed, classNames, dogOf } = desk;
  const is = (entry) => typeof entry === "string" && dogOf(entry) === dogOf(id);
  const from = standings.filter(({ entry }) => is(entry)).map((own) => [classNames[own.class_code], own.place ? placeWords(own.place) : ""].filter(Boolean).join(", "));
  if (!from.length) from.push(desk.numbers.has(id) ? t("not signed") : t("withdrawn"));
  const holds = breed.awards.filter(({ award, code }) => is(decided.get(code)) && one.lines.some((line) => line.winners_of?.includes(award)));
  return [...from, ...holds.map((each) => each.name)].join(" · ");
}

/** @param {Desk} desk */
function wordsOf({ breed, numbers, sentences }, one, decision) {
  const told = (value) => decisionWords(value ?? null, numbers);
  const within = (other) => (other.sex === one.sex ? other.name : awardWords(other));
  return {
    state: ({ decided }) => (decision.said().length ? t("two devices disagree") : apart([told(decided.get(one.code)), ...decision.waiting().map((value) => t("{decision} waits for the signature", { decision: told(value) }))])),
    waits: (waits) => (waits.length ? t("Not decided yet: {awards}.", { awards: apart(waits.map(within)) }) : ""),
    dispute: () => (decision.said().length ? t("Two devices say different things: {values}. Tap the one that counts.", { values: [...new Set(decision.said().map(told))].join(", ") }) : ""),
    finding: ({ standings, decided }) => {
      const found = checked(breed.awards, one, standings, decided);
      return found ? findingWords(found, sentences, new Map([...numbers, [one.award, one.name]])) : "";
    },
  };
}

function typeOf(value) {
  return value === undefined ? "undecided" : value === false ? "withheld" : "given";
}

/** "CACIB, dogs", "Best of breed". */
export function awardWords(one) {
  if (!one.sex) return one.name;
  return one.sex === "dog" ? t("{award}, dogs", { award: one.name }) : t("{award}, bitches", { award: one.name });
}

/** @param {string | false | null} value @param {Map<string, string>} numbers */
export function decisionWords(value, numbers) {
  if (value === null) return t("undecided");
  if (value === false) return t("withheld");
  return numbers.has(value) ? t("number {number}", { number: numbers.get(value) }) : t("a dog that was withdrawn");
}
