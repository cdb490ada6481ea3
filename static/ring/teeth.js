// Missing teeth, by modified Triadan number, as one looks into the mouth: the dog's right on the left.

import { framed, toggled } from "./answers.js";
import { h, mark, say } from "./dom.js";

// Quadrant, how many teeth it has, and whether it is read from the midline outwards.
const QUADRANTS = [[100, 10, false], [200, 10, true], [400, 11, false], [300, 11, true]];
const NAMES = ["", "first incisor", "second incisor", "third incisor", "canine", "P1", "P2", "P3", "P4", "M1", "M2", "M3"];
const SIDES = { 100: "upper right", 200: "upper left", 300: "lower left", 400: "lower right" };

export function teethRow(book, sheet, point) {
  const field = `set.${point.code}`;
  const held = () => book.value(sheet, field);
  const teeth = new Map(QUADRANTS.flatMap(([quadrant, count]) => range(count).map((at) => [quadrant + at, tooth(quadrant, at)])));
  function tooth(quadrant, at) {
    const number = quadrant + at;
    return h("button", {
      type: "button", class: "tooth", "aria-label": `${number}, ${SIDES[quadrant]} ${NAMES[at]}`,
      onclick: () => book.set(sheet, field, toggled(held() ?? [], number).sort((a, b) => a - b), "missing teeth"),
    }, h("span", {}, String(number)));
  }
  const whole = h("button", { type: "button", class: "option", onclick: () => book.set(sheet, field, held()?.length === 0 ? null : [], "teeth") }, "none missing");
  const said = h("span", { class: "said" });
  const rows = QUADRANTS.map(([quadrant, count, outward]) => {
    const order = outward ? range(count) : range(count).reverse();
    return h("div", { class: "quadrant", role: "group", "aria-label": SIDES[quadrant] }, order.map((at) => teeth.get(quadrant + at)));
  });
  const chart = h("details", { class: "teeth" }, h("summary", {}, "note missing teeth"), rows);
  const box = h("div", { class: "options" }, whole, chart, said);
  return framed(book, sheet, point, box, () => {
    const missing = held();
    for (const [number, button] of teeth) mark(button, "aria-pressed", String(Boolean(missing?.includes(number))));
    mark(whole, "aria-pressed", String(missing?.length === 0));
    say(said, missing?.length ? `missing: ${missing.join(", ")}` : "");
    return missing !== undefined;
  });
}

function range(count) {
  return Array.from({ length: count }, (_, index) => index + 1);
}
