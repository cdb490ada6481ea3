// Always under the thumb: grade, presence, undo, next dog, line-up.

import { h, mark, say } from "./dom.js";
import { typedField } from "./typed.js";
import { numberOf } from "./words.js";

const CAUTION = "A dog that bites, limps or suffers comes first: keep your distance, send it out of the ring, and call the steward and the show's vet. The governing body's rules decide what is reported.";

/**
 * @param {import("./book.js").Book} book
 * @param {import("./store.js").Store} store
 * @param {any} one the class
 * @param {any} entry
 * @param {{next: () => void, lineUp: () => void}} go
 */
export function footOf(book, store, one, entry, go) {
  const grade = `grade.${entry.id}`;
  const presence = `presence.${entry.id}`;
  const radios = one.grades.map((each) => h("label", { class: "grade" },
    h("input", { type: "radio", name: "grade", value: each.code, onchange: () => book.set(one.sheet, grade, each.code, "the grade") }),
    h("span", {}, each.name)));
  const reason = typedField(book, store, { sheet: one.sheet, field: `reason.${entry.id}`, label: "The reason, as it will stand in the report" });
  const why = h("div", { class: "why" }, reason.element, h("p", { class: "caution" }, CAUTION));
  const absent = h("button", { type: "button", class: "plain absent", onclick: () => book.set(one.sheet, presence, isAbsent() ? "present" : "absent", "presence") }, "Absent");
  const clear = h("button", { type: "button", class: "plain clear", onclick: () => book.set(one.sheet, grade, null, "the grade") }, "No grade");
  const undo = h("button", { type: "button", class: "plain undo", onclick: () => book.undo() });
  const isAbsent = () => book.value(one.sheet, presence) === "absent";
  const again = h("div", { class: "again", role: "status" }, h("span"), h("button", { type: "button", onclick: () => book.sign(entry.sheet) }, "Sign it again"));
  const element = h("footer", { class: "foot" }, again, why,
    one.grades.length ? h("details", { class: "grading", open: innerWidth >= 700 },
      h("summary", {}, "Grade"), h("fieldset", { class: "grades" }, h("legend", { class: "unseen" }, `Grade of number ${numberOf(entry)}`), radios)) : null,
    h("div", { class: "actions" }, absent, one.grades.length ? clear : null, undo, h("span", { class: "gap" }),
      h("button", { type: "button", onclick: go.next }, "Next dog"), h("button", { type: "button", onclick: go.lineUp }, "Line-up")));
  const update = () => {
    const value = book.value(one.sheet, grade);
    for (const label of radios) label.firstChild.checked = label.firstChild.value === value;
    const asked = one.grades.find((each) => each.code === value)?.needs_reason;
    why.hidden = !asked;
    clear.hidden = value === undefined;
    mark(absent, "aria-pressed", String(isAbsent()));
    say(undo, book.undoWords ? `Undo ${book.undoWords}` : "Undo");
    undo.disabled = !book.undoWords;
    const held = book.held(entry.sheet);
    again.hidden = !held;
    say(again.firstChild, held ? `This critique is signed: ${held} later change${held === 1 ? "" : "s"} wait${held === 1 ? "s" : ""}.` : "");
    reason.update();
  };
  return { element, update };
}
