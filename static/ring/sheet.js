// One dog's sheet, in the order of the standard.

import { choiceRow, numberRow, setRow, yesNoRow } from "./answers.js";
import { disputeParts } from "./disputes.js";
import { h, mark, say } from "./dom.js";
import { favouritesOf, rememberRemark } from "./favourites.js";
import { twoSidedRow } from "./rows.js";
import { teethRow } from "./teeth.js";
import { typedField } from "./typed.js";
import { age, markWords, numberOf } from "./words.js";

const KINDS = { "two-sided": twoSidedRow, choice: choiceRow, number: numberRow, "yes-no": yesNoRow, set: setRow };

/**
 * @param {import("./book.js").Book} book
 * @param {import("./store.js").Store} store
 * @param {any} standard
 * @param {any} entry
 * @param {import("./tongue.js").Tongue} tongue
 */
export function sheetOf(book, store, standard, entry, tongue) {
  const points = standard.points.filter((point) => !point.sex || point.sex === entry.sex);
  const sections = [...new Set(points.map((point) => point.section))].map((name) => sectionOf(name, points.filter((point) => point.section === name)));
  function sectionOf(name, inside) {
    const rows = inside.map((point) => (point.code === "teeth" ? teethRow : KINDS[point.kind])(book, entry.sheet, point));
    const summary = h("span", { class: "told" });
    const element = h("details", { class: "section", id: `section-${name}`, open: true },
      h("summary", {}, h("span", { class: "title" }, name.replaceAll("-", " ")), summary), rows.map((row) => row.element));
    const update = () => {
      rows.forEach((row) => row.update());
      say(summary, inside.map((point) => told(book, entry.sheet, point)).filter(Boolean).join(", "));
    };
    return { element, update, name };
  }
  const jumps = h("nav", { class: "jumps", "aria-label": "Sections of the sheet" }, sections.map(({ name }) => h("button", {
    type: "button", class: "jump", onclick: () => jumpTo(name),
  }, name.replaceAll("-", " "))));
  const remark = typedField(book, store, { sheet: entry.sheet, field: "remark", label: "In your own words", rows: 3, left: (text) => rememberRemark(store, tongue, text).then(favourites.update) });
  const favourites = favouritesOf(store, tongue, remark, "the remark");
  favourites.update();
  const disputes = disputeParts(book, entry.sheet, points);
  const state = h("p", { class: "sheet-state" });
  const element = h("section", { class: "sheet", "aria-label": `Sheet of number ${numberOf(entry)}` },
    h("header", { class: "dog" }, h("h2", {}, h("span", { class: "number" }, numberOf(entry)), h("span", {}, `${entry.sex}, ${age(entry.months)}`)), state),
    disputes.element, jumps, sections.map((section) => section.element), remark.element, favourites.element);
  const update = () => {
    [...sections, remark, disputes].forEach((part) => part.update());
    const signed = book.isSigned(entry.sheet);
    const held = book.held(entry.sheet);
    say(state, signed ? (held ? `Signed; ${held} later change${held === 1 ? "" : "s"} held until you sign again` : "Signed") : "");
    mark(element, "data-signed", signed ? "yes" : null);
  };
  return { element, update };
}

/** Opens a section and brings it to the top. @param {string} name */
export function jumpTo(name) {
  const section = document.getElementById(`section-${name}`);
  if (!(section instanceof HTMLDetailsElement)) return;
  section.open = true;
  section.scrollIntoView({ block: "start" });
  section.querySelector("summary")?.focus({ preventScroll: true });
}

/** Brings one point under the eye and its first control under the keyboard. @param {string} code */
export function jumpToPoint(code) {
  const row = document.getElementById(`point-${code}`);
  const section = row?.closest("details.section");
  if (section instanceof HTMLDetailsElement) section.open = true;
  row?.scrollIntoView({ block: "center" });
  row?.querySelector(".stop, .option, input, summary")?.focus({ preventScroll: true });
}

/** What a folded section still tells of a point. */
function told(book, sheet, point) {
  const mark = book.value(sheet, `mark.${point.code}`);
  if (mark !== undefined) return mark === 0 ? "" : `${point.name} ${markWords(point, mark)}`;
  const choice = book.value(sheet, `choice.${point.code}`);
  return choice === undefined ? "" : `${point.name} ${choice.replaceAll("-", " ")}`;
}
