// The numbers of the photo as it is marked, by the same arithmetic as the server's.

import { h, mark, say } from "../../ring/dom.js";
import { decimal, t } from "../../ring/say.js";
import { measure } from "../measuring.js";

export class Numbers {
  /** @param {any} view one of the page's views */
  constructor(view) {
    this.view = view;
    const cell = () => h("td", { class: "num" });
    this.rows = new Map(view.numbers.map((row) => [row.code, { ...row, value: cell(), spread: cell() }]));
    const body = [...this.rows.values()].map((row) => {
      row.line = h("tr", { hidden: true, "data-code": row.code }, h("th", { scope: "row" }, row.name), row.value, row.spread);
      return row.line;
    });
    this.none = h("p", { class: "help" }, t("Numbers appear here as the points are set."));
    const heads = [t("Measurement"), t("Value"), "95 %"].map((words, i) => h("th", { scope: "col", class: i > 0 && "num" }, words));
    this.table = h("table", { class: "numbers" }, h("thead", {}, h("tr", {}, heads)), h("tbody", {}, body));
    this.element = h("div", {}, this.none, this.table);
  }

  /** @param {import("./marks.js").Marks} marks @param {number} clickSd in pixels */
  show(marks, clickSd) {
    const photo = { view: this.view.code, landmarks: marks.landmarks, ground: marks.ground, clickSd };
    let shown = 0;
    for (const { code, value, sd } of measure(photo)) {
      const row = this.rows.get(code);
      mark(row.line, "hidden", value === null);
      if (value === null) continue;
      shown += 1;
      say(row.value, written(value, row.unit));
      say(row.spread, spread(row, value, sd));
    }
    mark(this.none, "hidden", shown > 0);
    mark(this.table, "hidden", shown === 0);
  }
}

/** As ringside/photos/words.py writes it. @param {number} value @param {string} unit */
export function written(value, unit) {
  const text = unit === "deg" ? `${value.toFixed(1)}°` : value.toFixed(2);
  return asRead(Number.parseFloat(text) === 0 ? text.replace("-", "") : text.replace("-", "−"));
}

/** With the decimal sign of the page's language. @param {string} number */
function asRead(number) {
  return number.replace(".", decimal(0.1).charAt(1));
}

export function spread({ ofLogarithm, unit }, value, sd) {
  if (ofLogarithm) return t("{low} to {high}", { low: written(value * Math.exp(-1.96 * sd), unit), high: written(value * Math.exp(1.96 * sd), unit) });
  return asRead(unit === "deg" ? `± ${(1.96 * sd).toFixed(1)}°` : `± ${(1.96 * sd).toFixed(3)}`);
}
