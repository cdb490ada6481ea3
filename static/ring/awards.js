// A breed's awards: the certificate round of each sex, then the best of the breed; called out to the steward, and signed.

import { awardWords, blockOf, decisionWords, onceADog } from "./award-block.js";
import { whose } from "./candidates.js";
import { fill, h, say } from "./dom.js";
import { apart, inside, t } from "./say.js";
import { mayBePlaced, placesOf } from "./standing.js";
import { numberOf } from "./words.js";

const GROUPS = ["dog", "bitch", null];

/**
 * @param {import("./book.js").Book} book
 * @param {any} day
 * @param {any} breed
 * @param {{announce: (text: string) => void, maySign: boolean, mayDecide: boolean}} page
 */
export function awardsOf(book, day, breed, page) {
  const classes = classesOf(day, breed);
  const elsewhere = breed.elsewhere ?? [];
  const entries = [...classes, ...elsewhere].flatMap((one) => one.entries);
  const numbers = new Map(entries.map((entry) => [String(entry.id), numberOf(entry)]));
  const dogs = new Map(entries.map((entry) => [String(entry.id), whose(standingOf(entry))]));
  const dogOf = (id) => dogs.get(id) ?? whose({ entry: id });
  const others = ({ sex }) => onceADog([
    ...classes.filter((one) => !sex || one.sex === sex).flatMap((one) => one.entries.filter((entry) => mayBePlaced(book, one, entry))),
    ...elsewhere.filter((one) => !sex || one.sex === sex).flatMap((one) => one.entries),
  ].map((entry) => String(entry.id)), dogOf);
  const classNames = Object.fromEntries([...classes, ...elsewhere].map((one) => [one.code, inside(one.name)]));
  const desk = { book, breed, classes: [...classes, ...elsewhere], numbers, dogOf, classNames, sentences: day.sentences, announce: page.announce, others };
  const blocks = breed.awards.map((one) => ({ one, ...blockOf(desk, one) }));
  const missing = h("ul", { class: "missing" });
  const calls = callsOf(breed, numbers);
  const signing = signingOf(book, breed, page);
  const counted = h("p", { class: "pace" });
  const undo = h("button", { type: "button", class: "plain", onclick: () => book.undo() });
  const rounds = GROUPS.map((sex) => {
    const own = blocks.filter(({ one }) => one.sex === sex);
    return own.length ? h("section", { class: "round" }, h("h3", {}, groupWords(sex)), own.map(({ element }) => element)) : null;
  });
  if (!page.mayDecide) for (const { element } of blocks) element.inert = true;
  const element = h("section", { class: "lineup awards", "aria-label": t("Awards, {breed}", { breed: breed.name }) },
    h("h2", { tabindex: "-1" }, t("Awards")), missing, page.mayDecide ? rounds : calls.element, page.mayDecide ? calls.element : rounds, signing.element,
    h("footer", { class: "foot" }, h("div", { class: "actions" }, undo, h("span", { class: "gap" }), counted)));
  const update = () => {
    const now = { standings: [...standingsOf(book, classes), ...elsewhere.flatMap((one) => one.standings)], decided: decidedOf(book, breed) };
    fill(missing, ["dog", "bitch"].map((sex) => lackingWords(book, classes.filter((one) => one.sex === sex)))
      .concat(elsewhereWords(elsewhere)).filter(Boolean).map((text) => h("li", {}, text)));
    for (const block of blocks) block.update(now);
    calls.update(now.decided);
    signing.update(now.decided);
    const words = book.undoWordsFor(breed.sheet);
    say(undo, words ? t("Undo {words}", { words }) : t("Undo"));
    undo.disabled = !words;
    say(counted, t("{decided} of {all} awards decided", { decided: now.decided.size, all: breed.awards.length }));
  };
  return { element, update };
}

function groupWords(sex) {
  if (!sex) return t("Of the breed");
  return sex === "dog" ? t("Dogs") : t("Bitches");
}

/** Which classes of one sex nobody competes from yet, in words. */
function lackingWords(book, classes) {
  const lacking = classes.filter((one) => !book.isSigned(one.sheet) || book.disputes(one.sheet).length);
  if (!lacking.length) return "";
  const names = lacking.map((one) => inside(one.name)).join(", ");
  return lacking[0].sex === "dog" ? t("Dogs, not signed yet: {names}. Nobody competes from there.", { names }) : t("Bitches, not signed yet: {names}. Nobody competes from there.", { names });
}

/** What is judged in another ring comes with the day: opening the page again brings what was signed there since. */
function elsewhereWords(elsewhere) {
  const open = elsewhere.filter((one) => !one.signed).map((one) => `${inside(one.name)}, ${one.sex === "dog" ? t("dogs") : t("bitches")}`);
  return open.length ? t("In another ring, not signed when this page was opened: {classes}. Open the page again once they are signed.", { classes: apart(open) }) : "";
}

/** The breed's classes of this ring that have dogs, in their order. */
export function classesOf(day, breed) {
  return day.classes.filter((one) => breed.classes.includes(one.id));
}

/** An entry and its dog, which the page knows by its number alone: entries without one are a dog each. */
function standingOf({ id, number }) {
  return { entry: String(id), dog: number === null ? null : String(number) };
}

/** What the signed cards say of every dog that may be placed. @returns {import("./candidates.js").Standing[]} */
export function standingsOf(book, classes) {
  return classes.filter((one) => book.isSigned(one.sheet)).flatMap((one) => {
    const places = placesOf(book, one);
    return one.entries.filter((entry) => mayBePlaced(book, one, entry)).map((entry) => ({
      ...standingOf(entry), sex: one.sex, class_code: one.code,
      place: places.indexOf(String(entry.id)) + 1 || null, grade: book.value(one.sheet, `grade.${entry.id}`) ?? null,
    }));
  });
}

/** @returns {import("./candidates.js").Decided} */
export function decidedOf(book, breed) {
  const values = breed.awards.map(({ code }) => [code, book.value(breed.sheet, `award.${code}`)]);
  return new Map(values.filter(([, value]) => value !== undefined));
}

/** What is called out to the steward, who hands the cards out: one line a number and award. */
function callsOf(breed, numbers) {
  const list = h("ul", { class: "calls" });
  const element = h("section", { class: "calling" }, h("h3", {}, t("To call out")), list);
  const update = (decided) => {
    const given = breed.awards.filter(({ code }) => typeof decided.get(code) === "string");
    const lines = given.map((one) => h("li", {}, h("span", { class: "number" }, capital(decisionWords(decided.get(one.code), numbers))), `: ${one.name}`));
    fill(list, lines.length ? lines : h("li", { class: "none" }, t("No award is given yet.")));
  };
  return { element, update };
}

function capital(words) {
  return words[0].toUpperCase() + words.slice(1);
}

function signingOf(book, breed, page) {
  const reminders = h("ul", { class: "missing" });
  const sign = h("button", { type: "button", class: "sign", onclick: async () => {
    await book.sign(breed.sheet);
    page.announce(t("The awards of this breed are signed."));
  } });
  const state = h("p", { class: "signed", role: "status" });
  const element = h("section", { class: "signing" }, h("h3", {}, t("Sign")), reminders, sign, state);
  const update = (decided) => {
    const open = breed.awards.filter(({ code }) => !decided.has(code));
    const disputed = book.disputes(breed.sheet).length > 0;
    const lines = [
      disputed && t("Two devices disagree about an award: settle it first."),
      decided.size > 0 && open.length > 0 && t("Undecided: {awards}. Sign only if it stays so.", { awards: apart(open.map(awardWords)) }),
    ];
    fill(reminders, lines.filter(Boolean).map((text) => h("li", {}, text)));
    const signed = book.isSigned(breed.sheet);
    const held = book.held(breed.sheet);
    say(sign, signed ? t("Sign the awards again") : t("Sign the awards"));
    sign.disabled = !page.maySign || disputed || (signed ? !held : !decided.size);
    say(state, !page.maySign ? t("The judge signs.") : !signed ? "" : held ? t("Signed. {n} later change waits until you sign again.|Signed. {n} later changes wait until you sign again.", { n: held }) : t("Awards signed: the office can publish them."));
  };
  return { element, update };
}
