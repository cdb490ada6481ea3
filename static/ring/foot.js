// Always under the thumb: grade, presence, undo, next dog, line-up.

import { h, mark, say } from "./dom.js";
import { latest, press } from "./latest.js";
import { t } from "./say.js";
import { typedField } from "./typed.js";
import { numberOf } from "./words.js";

/**
 * @param {import("./book.js").Book} book
 * @param {import("./store.js").Store} store
 * @param {any} one the class
 * @param {any} entry
 * @param {{next: () => void, lineUp: () => void}} go
 */
export function footOf(book, store, one, entry, go) {
  const presence = `presence.${entry.id}`;
  const isAbsent = () => latest(book, one.sheet, presence) === "absent";
  const absent = h("button", { type: "button", class: "plain absent", onclick: () => book.set(one.sheet, presence, isAbsent() ? "present" : "absent", t("presence of {number}", { number: numberOf(entry) })) }, t("Absent"));
  const grades = gradesOf(book, one, entry);
  const why = whyOf(book, store, one, entry);
  const undo = undoOf(book, one, entry);
  const again = againOf(book, one, entry, go.lineUp);
  const element = h("footer", { class: "foot" }, again.element, why.element, grades.element,
    h("div", { class: "actions" }, h("div", { class: "changes" }, absent, grades.clear, undo.element),
      h("div", { class: "ways" }, h("button", { type: "button", onclick: go.next }, t("Next dog")), h("button", { type: "button", onclick: go.lineUp }, t("Line-up")))));
  const update = () => {
    press(absent, book.value(one.sheet, presence) === "absent", isAbsent());
    for (const part of [again, why, grades, undo]) part.update();
  };
  const show = (changes) => changes.some(({ sheet }) => sheet === one.sheet) && update();
  return { element, update, show };
}

/** The grades of the class; a class without grades has none to show. */
function gradesOf(book, one, entry) {
  const field = `grade.${entry.id}`;
  const then = () => latest(book, one.sheet, field);
  const set = (code) => {
    // Where the grades lie over the sheet, they make room again.
    if (innerWidth < 700) element.open = false;
    return code === (then() ?? null) ? update() : book.set(one.sheet, field, code, t("the grade of {number}", { number: numberOf(entry) }));
  };
  // A click, not a change: it also comes where a finger goes back to the grade that is signed.
  const labels = one.grades.map((each) => h("label", { class: "grade" },
    h("input", { type: "radio", name: "grade", value: each.code, onclick: () => set(each.code) }), h("span", {}, each.name)));
  const told = h("span");
  const clear = one.grades.length ? h("button", { type: "button", class: "plain clear", onclick: () => set(null) }, t("No grade")) : null;
  const element = one.grades.length ? h("details", { class: "grading", open: innerWidth >= 700 },
    h("summary", {}, told), h("fieldset", { class: "grades" }, h("legend", { class: "unseen" }, t("Grade of number {number}", { number: numberOf(entry) })), labels)) : null;
  const update = () => {
    const now = book.value(one.sheet, field);
    for (const label of labels) {
      const { value } = label.firstChild;
      label.firstChild.checked = value === now;
      mark(label, "data-waits", then() === now ? null : value === then() ? "to-count" : value === now ? "to-go" : null);
    }
    say(told, one.grades.find(({ code }) => code === now)?.name ?? t("Grade"));
    if (clear) clear.hidden = now === undefined && then() === undefined;
  };
  return { element, clear, update };
}

/** The reason that some grades ask for; open while it is missing, and folded to itself when it is there. */
function whyOf(book, store, one, entry) {
  const field = `reason.${entry.id}`;
  const reason = typedField(book, store, { sheet: one.sheet, field, label: t("The reason, as it will stand in the report") });
  const given = h("span", { class: "told" });
  const element = h("details", { class: "why" }, h("summary", {}, h("span", { class: "title" }, t("The reason, for the report")), given), reason.element, h("p", { class: "caution" }, t("A dog that bites, limps or suffers comes first: keep your distance, send it out of the ring, and call the steward and the show's vet. The governing body's rules decide what is reported.")));
  const update = () => {
    const grade = latest(book, one.sheet, `grade.${entry.id}`);
    const asked = Boolean(one.grades.find((each) => each.code === grade)?.needs_reason);
    const written = latest(book, one.sheet, field);
    if (asked && element.hidden) element.open = !written;
    element.hidden = !asked;
    say(given, written ?? t("is missing"));
    reason.update();
  };
  element.hidden = true;
  return { element, update };
}

/** Undo says what it takes back, and of whom where that is not the dog in hand. */
function undoOf(book, one, entry) {
  const element = h("button", { type: "button", class: "plain undo", onclick: () => book.undo() });
  const update = () => {
    const here = book.undoWordsFor(entry.sheet) || book.undoWordsFor(one.sheet);
    const other = one.entries.find((each) => book.undoWordsFor(each.sheet));
    const words = book.undoWords;
    const whole = here ? t("Undo {words}", { words }) : other ? t("Undo {words} of {number}", { words, number: numberOf(other) }) : t("Undo {words} in another class", { words });
    say(element, words ? whole : t("Undo"));
    element.disabled = !book.undoWords;
  };
  return { element, update };
}

/** What changed after a signature and waits for the next one. */
function againOf(book, one, entry, lineUp) {
  const line = (name, button) => h("p", { class: name }, h("span"), button);
  const critique = line("of-critique", h("button", { type: "button", onclick: () => book.sign(entry.sheet) }, t("Sign it again")));
  const results = line("of-results", h("button", { type: "button", onclick: lineUp }, t("Look and sign")));
  const element = h("div", { class: "again", role: "status" }, critique, results);
  const update = () => {
    const held = [book.held(entry.sheet), book.held(one.sheet)];
    [critique, results].forEach((each, index) => {
      each.hidden = !held[index];
      say(each.firstChild, held[index] ? againWords(index, held[index]) : "");
    });
    element.hidden = !held[0] && !held[1];
  };
  return { element, update };
}

function againWords(index, n) {
  return index ? t("These results are signed: {n} later change waits.|These results are signed: {n} later changes wait.", { n }) : t("This critique is signed: {n} later change waits.|This critique is signed: {n} later changes wait.", { n });
}
