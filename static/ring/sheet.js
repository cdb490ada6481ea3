// One dog's sheet, in the order of the standard.

import { choiceRow, numberRow, setRow, yesNoRow } from "./answers.js";
import { disputeParts } from "./disputes.js";
import { h, mark, say } from "./dom.js";
import { oneAtATime, toldOf } from "./folding.js";
import { latest } from "./latest.js";
import { favouritesOf, rememberRemark } from "./favourites.js";
import { twoSidedRow } from "./rows.js";
import { ofPoints } from "./said.js";
import { t } from "./say.js";
import { teethRow } from "./teeth.js";
import { typedField } from "./typed.js";
import { age, numberOf, sectionWords, sexWords } from "./words.js";

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
      h("summary", {}, h("span", { class: "title" }, sectionWords(inside[0])), summary), rows.map((row) => row.element));
    const update = () => {
      rows.forEach((row) => row.update());
      say(summary, toldOf(book, entry.sheet, inside));
    };
    const show = (code) => rows[inside.findIndex((point) => point.code === code)]?.update();
    return { element, update, show, name, points: inside };
  }
  oneAtATime(sections, (point) => latest(book, entry.sheet, `mark.${point.code}`) !== undefined, jumpTo);
  const jumps = h("nav", { class: "jumps", "aria-label": t("Sections of the sheet") }, sections.map(({ name, points: inside }) => h("button", {
    type: "button", class: "jump", onclick: () => jumpTo(name),
  }, sectionWords(inside[0]))));
  const remark = typedField(book, store, { sheet: entry.sheet, field: "remark", label: t("In your own words"), rows: 3, left: (text) => rememberRemark(store, tongue, text).then(favourites.update) });
  const favourites = favouritesOf(store, tongue, remark, t("the remark"));
  favourites.update();
  const disputes = disputeParts(book, entry.sheet, ofPoints(points));
  const state = h("p", { class: "sheet-state" });
  const element = h("section", { class: "sheet", "aria-label": t("Sheet of number {number}", { number: numberOf(entry) }) },
    h("header", { class: "dog" }, h("h2", {}, h("span", { class: "number" }, numberOf(entry)), h("span", {}, `${sexWords(entry.sex)}, ${age(entry.months)}`)), state),
    disputes.element, jumps, sections.map((section) => section.element), remark.element, favourites.element);
  const update = () => {
    [...sections, remark, disputes].forEach((part) => part.update());
    const signed = book.isSigned(entry.sheet);
    const held = book.held(entry.sheet);
    say(state, signed ? (held ? t("Signed; {n} later change held until you sign again|Signed; {n} later changes held until you sign again", { n: held }) : t("Signed")) : "");
    mark(element, "data-signed", signed ? "yes" : null);
  };
  /** The rows of these changes alone, so that a mark is seen before everything that follows from it. */
  const show = (changes) => {
    for (const { sheet, field } of changes) {
      if (sheet === entry.sheet) sections.forEach((section) => section.show(field.slice(field.indexOf(".") + 1)));
    }
  };
  return { element, update, show };
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
