// Draws marks and lines over the picture; moves what is there instead of making it anew.

import { mark, s } from "../../ring/dom.js";
import { through } from "./lines.js";
import { GROUND } from "./marks.js";

/** @typedef {import("./marks.js").Marks} Marks */

const DOT_PX = 7;

export class Overlay {
  #lines;
  #ground = s("polyline", { class: "line ground" });
  #dots = new Map();
  #layer = s("g", { class: "dots" });

  /** @param {SVGSVGElement} svg @param {import("./lines.js").Line[]} lines @param {number} height */
  constructor(svg, lines, height) {
    this.svg = svg;
    this.height = height;
    this.#lines = lines.map((line) => [line, s("polyline", { class: `line ${line.kind}` })]);
    svg.append(this.#ground, ...this.#lines.map(([, shape]) => shape), this.#layer);
  }

  /** @param {Marks} marks @param {string | null} held the name that a finger holds @param {number} pixel picture pixels of one on the screen */
  draw(marks, held, pixel) {
    const { places, ground } = marks;
    mark(this.#ground, "points", ground ? text(ground) : null);
    for (const [line, shape] of this.#lines) {
      const at = through(line, places, ground, this.height);
      mark(shape, "points", at ? text(at) : null);
    }
    for (const name of new Set([...this.#dots.keys(), ...Object.keys(places)])) {
      this.#dot(name, places[name], name === held || name === marks.current, pixel);
    }
  }

  #dot(name, place, isHeld, pixel) {
    if (!place) {
      this.#dots.get(name)?.remove();
      this.#dots.delete(name);
      return;
    }
    if (!this.#dots.has(name)) {
      const dot = s("circle", { class: GROUND.includes(name) ? "dot level-dot" : "dot", "data-name": name });
      this.#dots.set(name, dot);
      this.#layer.append(dot);
    }
    const dot = this.#dots.get(name);
    mark(dot, "cx", place[0].toFixed(1));
    mark(dot, "cy", place[1].toFixed(1));
    mark(dot, "r", (DOT_PX * pixel * (isHeld ? 1.4 : 1)).toFixed(1));
    dot.classList.toggle("held", isHeld);
  }
}

const text = (places) => places.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(" ");
