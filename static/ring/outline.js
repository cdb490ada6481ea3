// The sheet as a dog: marks at their places; touching a part opens its section.

import { fill, h, s } from "./dom.js";
import { jumpTo } from "./sheet.js";
import { markShape, praiseShape } from "./symbols.js";

/**
 * @param {import("./book.js").Book} book
 * @param {any} drawing of the day: {width, height, under, underShade, body, strokes, shade, places, regions}
 * @param {any} standard
 * @param {any} entry
 */
export function outlineOf(book, drawing, standard, entry) {
  const marks = s("g", { class: "marks" });
  const present = new Set(standard.points.map((point) => point.section));
  const parts = Object.entries(drawing.regions).filter(([name]) => present.has(name)).map(([name, path]) => s("path", {
    class: "part", d: path, onclick: () => jumpTo(name),
  }, s("title", {}, name)));
  const picture = s("svg", { class: "dog", viewBox: `0 0 ${drawing.width} ${drawing.height}`, role: "img", "aria-label": "The dog with your marks at their places" },
    drawing.under.map((d) => s("path", { class: "ink far", d })), s("path", { class: "hatch far", d: drawing.under_shade }),
    drawing.body.map((d) => s("path", { class: "body", d })), s("path", { class: "hatch", d: drawing.shade }),
    drawing.strokes.map((d) => s("path", { class: "ink", d })), parts, marks);
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
