// How a mark looks: too little is open and points down, too much is filled and points up, the size tells the degree.

import { s } from "./dom.js";

const SIDES = [0, 7, 9.5, 12];

/** @param {number} mark -3..3 @param {number} [x] @param {number} [y] @returns {SVGElement} */
export function markShape(mark, x = 0, y = 0) {
  if (mark === 0) return s("circle", { class: "mark full", cx: x, cy: y, r: 3.2 });
  const side = SIDES[Math.abs(mark)];
  const tip = mark > 0 ? -side : side;
  const corners = [[x, y + tip], [x + 0.95 * side, y - tip * 0.7], [x - 0.95 * side, y - tip * 0.7]];
  const points = corners.map(([a, b]) => `${a.toFixed(1)},${b.toFixed(1)}`).join(" ");
  return s("polygon", { class: `mark ${mark > 0 ? "full" : "open"}`, points });
}

/** @param {number} x @param {number} y @returns {SVGElement} */
export function praiseShape(x = 0, y = 0) {
  return s("circle", { class: "mark open", cx: x, cy: y, r: 8.5 });
}

/** A symbol alone. @param {number} mark @returns {SVGElement} */
export function markSign(mark) {
  return s("svg", { class: "sign", viewBox: "-14 -14 28 28", width: 24, height: 24, "aria-hidden": "true" }, markShape(mark));
}
