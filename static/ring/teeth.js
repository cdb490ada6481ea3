// Missing teeth, by modified Triadan number, as one looks into the mouth: the dog's right on the left.

import { framed, toggled } from "./answers.js";
import { h, say } from "./dom.js";
import { latest, press } from "./latest.js";
import { t } from "./say.js";

// Quadrant, how many teeth it has, and whether it is read from the midline outwards.
const QUADRANTS = [[100, 10, false], [200, 10, true], [400, 11, false], [300, 11, true]];
const CHEEK = ["P1", "P2", "P3", "P4", "M1", "M2", "M3"];

export function teethRow(book, sheet, point) {
  const field = `set.${point.code}`;
  const now = () => book.value(sheet, field);
  const then = () => latest(book, sheet, field);
  const set = (missing) => book.set(sheet, field, missing, point.name);
  const teeth = new Map(QUADRANTS.flatMap(([quadrant, count]) => range(count).map((at) => [quadrant + at, tooth(quadrant, at)])));
  function tooth(quadrant, at) {
    const number = quadrant + at;
    return h("button", {
      type: "button", class: "tooth", "aria-label": `${number}, ${sideWords(quadrant)} ${toothWords(at)}`,
      onclick: () => set(toggled(then() ?? [], number).sort((a, b) => a - b)),
    }, h("span", {}, String(number)));
  }
  const whole = h("button", { type: "button", class: "option", onclick: () => set(then()?.length === 0 ? null : []) }, t("none missing"));
  const told = h("span", { class: "missing-teeth" });
  const rows = QUADRANTS.map(([quadrant, count, outward]) => {
    const order = outward ? range(count) : range(count).reverse();
    return h("div", { class: "quadrant", role: "group", "aria-label": sideWords(quadrant) },
      h("span", { class: "side", "aria-hidden": "true" }, sideWords(quadrant)), order.map((at) => teeth.get(quadrant + at)));
  });
  const chart = h("details", { class: "teeth" }, h("summary", {}, t("note missing teeth")), rows);
  const box = h("div", { class: "options" }, whole, told, chart);
  return framed(book, sheet, point, field, box, () => {
    for (const [number, button] of teeth) press(button, Boolean(now()?.includes(number)), Boolean(then()?.includes(number)));
    press(whole, now()?.length === 0, then()?.length === 0);
    say(told, now()?.length ? t("missing: {teeth}", { teeth: now().join(", ") }) : "");
    return now() !== undefined;
  });
}

function sideWords(quadrant) {
  switch (quadrant) {
    case 100: return t("upper right");
    case 200: return t("upper left");
    case 300: return t("lower left");
    default: return t("lower right");
  }
}

function toothWords(at) {
  switch (at) {
    case 1: return t("first incisor");
    case 2: return t("second incisor");
    case 3: return t("third incisor");
    case 4: return t("canine");
    default: return CHEEK[at - 5];
  }
}

function range(count) {
  return Array.from({ length: count }, (_, index) => index + 1);
}
