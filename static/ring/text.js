// The critique as it grows, written on the tablet from the marks; or the judge's own text, with what it no longer says.

import { disagreements, ownSentences } from "./agreeing.js";
import { compose } from "./compose.js";
import { fill, h, say } from "./dom.js";
import { favouritesOf, remember } from "./favourites.js";
import { fieldKind } from "./fields.js";
import { latest } from "./latest.js";
import { may } from "./roles.js";
import { t } from "./say.js";
import { placesOf } from "./standing.js";
import { TONGUES, tongueChoice } from "./tongue.js";
import { typedField } from "./typed.js";

const PLURAL = { mark: "marks", choice: "choices", number: "numbers", yes: "yes" };

/** @param {import("./book.js").Book} book @param {import("./store.js").Store} store @param {any} day @param {any} one the class @param {any} entry @param {import("./tongue.js").Tongue} tongue */
export function textOf(book, store, day, one, entry, tongue) {
  const title = h("h3", {}, t("The text as it grows"));
  const words = h("p", { class: "words" });
  const begin = h("button", { type: "button", class: "plain", onclick: () => takeOver() }, t("Write it myself"));
  const inside = h("div", { class: "own" });
  const missing = h("p", { class: "help" });
  const element = h("section", { class: "text", "aria-label": t("The text as it grows") }, title, tongueChoice(tongue), missing, words, begin, inside);
  const mayWrite = may(day, "write");
  inside.inert = !mayWrite;
  const field = () => `text.${tongue.code}`;
  let own = null;
  function ownField() {
    if (own?.code !== tongue.code) {
      own = ownTextOf(book, store, day, one, entry, tongue);
      fill(inside, own.element);
    }
    return own;
  }
  async function takeOver() {
    const text = compose(tongue.tableOf(one.breed), saidOf(book, one, entry)).text;
    await book.set(entry.sheet, field(), text, t("your own text"));
    ownField().focus();
  }
  const update = () => {
    const table = tongue.tableOf(one.breed);
    const sheet = saidOf(book, one, entry);
    const isOwn = latest(book, entry.sheet, field()) !== undefined || own?.isBeingWritten();
    const composed = table && !isOwn && sheet.said ? compose(table, sheet).text : "";
    say(title, isOwn ? t("Your own text") : t("The text as it grows"));
    say(missing, table && table.language !== tongue.code ? t("The words for {language} have not come to this tablet yet: find the network once. Until then the text is English.", { language: TONGUES[tongue.code] }) : "");
    words.lang = table?.language ?? "en";
    say(words, composed);
    words.hidden = !composed;
    begin.hidden = !mayWrite || !composed || table.language !== tongue.code;
    inside.hidden = !isOwn;
    if (isOwn) ownField().update();
  };
  tongue.addEventListener("changed", () => element.isConnected && update());
  return { element, update };
}

/** The judge's own text of one language: a field, what no longer agrees, and the way back to the composed text. */
function ownTextOf(book, store, day, one, entry, tongue) {
  const code = tongue.code;
  const name = `text.${code}`;
  const table = () => tongue.tableOf(one.breed);
  const typed = typedField(book, store, {
    sheet: entry.sheet, field: name, label: t("Your own text, {language}", { language: TONGUES[code] }), rows: 8, lang: code,
    left: (text) => remember(store, code, ownSentences(table(), saidOf(book, one, entry), text)).then(favourites.update),
  });
  const favourites = favouritesOf(store, tongue, typed, t("your own text"));
  const points = h("ul", { class: "missing" });
  const since = h("div", { class: "since", role: "status" }, h("h4", {}, t("No longer agrees with the marks")), points);
  const back = h("button", { type: "button", class: "plain", onclick: () => book.set(entry.sheet, name, null, t("your own text")) }, t("Take the composed text again"));
  const element = h("div", {}, typed.element, since, favourites.element,
    h("p", { class: "help" }, t("This text is printed as you write it. The other languages are written from the marks, and say so.")), back);
  favourites.update();
  const area = typed.element.querySelector("textarea");
  let told = null;
  const update = () => {
    typed.update();
    const found = disagreeing(book, day, one, entry, table(), code);
    since.hidden = !found.length;
    if (told !== found.join("|")) fill(points, found.map((words) => h("li", {}, words)));
    told = found.join("|");
  };
  return { code, element, update, focus: () => area.focus(), isBeingWritten: () => document.activeElement === area };
}

/** What the judge's own text of a language no longer says as the marks do; empty where there is none. */
export function disagreeing(book, day, one, entry, table, code) {
  const text = book.value(entry.sheet, `text.${code}`);
  if (!text || table?.language !== code) return [];
  const names = new Map(day.standards[one.breed].points.map((point) => [point.code, point.name]));
  return disagreements(book, entry.sheet, table, saidOf(book, one, entry), text, `text.${code}`, (point) => names.get(point) ?? point);
}

/** The sheet as the composer takes it. */
export function saidOf(book, one, entry) {
  const values = book.values(entry.sheet);
  const sheet = { sex: entry.sex, marks: {}, choices: {}, numbers: {}, yes: {}, sets: {}, praise: [], said: 0 };
  for (const [field, value] of values) {
    const kind = fieldKind(field);
    const subject = field.slice(field.indexOf(".") + 1);
    if (kind in PLURAL) sheet[PLURAL[kind]][subject] = value;
    else if (kind === "praise" && value) sheet.praise.push(subject);
    else if (kind === "set" && subject === "teeth") sheet.teeth_missing = value;
    else if (kind === "set") sheet.sets[subject] = value;
    else continue;
    sheet.said += 1;
  }
  return { ...sheet, ...decided(book, one, entry) };
}

function decided(book, one, entry) {
  const place = placesOf(book, one).indexOf(String(entry.id)) + 1;
  const grade = book.value(one.sheet, `grade.${entry.id}`);
  const reason = book.value(one.sheet, `reason.${entry.id}`);
  return { ...(grade ? { grade } : {}), ...(reason ? { reason } : {}), ...(place ? { place } : {}) };
}
