// The sheet as a dog: marks at their places; touching the croup opens the croup.

import { fill, h, s } from "./dom.js";
import { t } from "./say.js";
import { jumpToPoint } from "./sheet.js";
import { markShape, praiseShape } from "./symbols.js";

/**
 * @param {import("./book.js").Book} book
 * @param {any} drawing of the day: {width, height, under, underShade, body, strokes, shade, places}
 * @param {any} standard
 * @param {any} entry
 */
export function outlineOf(book, drawing, standard, entry) {
  const marks = s("g", { class: "marks" });
  const picture = s("svg", { class: "dog", viewBox: `0 0 ${drawing.width} ${drawing.height}`, role: "img", "aria-label": t("The dog with your marks at their places"), onclick: (event) => touch(event) },
    drawing.under.map((d) => s("path", { class: "ink far", d })), s("path", { class: "hatch far", d: drawing.under_shade }),
    drawing.body.map((d) => s("path", { class: "body", d })), s("path", { class: "hatch", d: drawing.shade }),
    drawing.strokes.map((d) => s("path", { class: "ink", d })), marks);
  /** Opens the point whose place lies nearest to the finger. */
  function touch(event) {
    const finger = new DOMPoint(event.clientX, event.clientY).matrixTransform(picture.getScreenCTM().inverse());
    const far = ([x, y]) => (x - finger.x) ** 2 + (y - finger.y) ** 2;
    const shown = standard.points.filter((point) => drawing.places[point.code] && document.getElementById(`point-${point.code}`));
    const nearest = shown.sort((a, b) => far(drawing.places[a.code]) - far(drawing.places[b.code]))[0];
    if (nearest) jumpToPoint(nearest.code);
  }
  const element = h("figure", { class: "outline" }, picture);
  const update = () => fill(marks, standard.points.map((point) => {
    const place = drawing.places[point.code];
    const value = book.value(entry.sheet, `mark.${point.code}`);
    const praised = book.value(entry.sheet, `praise.${point.code}`);
    if (!place || (value === undefined && !praised)) return null;
    return [praised ? praiseShape(...place) : null, markShape(value ?? 0, ...place)];
  }));
  return { element, update };
}
