// The drawn dog: one of its points is a handle, and the drawing follows it.

import { fill, mark, s } from "../../ring/dom.js";
import { t } from "../../ring/say.js";
import { through } from "../marking/lines.js";
import { bent, nearestT, pathAt, placesAt } from "./bending.js";

const KEYS = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1, PageDown: -5, PageUp: 5 };
const STEP = 1 / 60;

export class Dog {
  #held = false;

  /**
   * @param {SVGSVGElement} svg
   * @param {string[]} kinds
   * @param {(places: Record<string, [number, number]>, t: number) => void} moved
   */
  constructor(svg, kinds, moved) {
    this.svg = svg;
    this.moved = moved;
    this.paths = kinds.map((kind) => s("path", { class: kind }));
    this.lines = s("g", { class: "lines" });
    this.handle = s("circle", { class: "handle", r: 17, tabindex: "0", role: "slider", "aria-valuemin": "0", "aria-valuemax": "100" });
    this.ground = s("polyline", { class: "line ground" });
    svg.append(this.ground, ...this.paths, this.lines, this.handle);
    svg.addEventListener("pointerdown", (event) => this.#down(event));
    svg.addEventListener("pointermove", (event) => this.#held && this.#follow(event));
    for (const name of ["pointerup", "pointercancel"]) svg.addEventListener(name, () => (this.#held = false));
    this.handle.addEventListener("keydown", (event) => this.#key(event));
  }

  /** @param {any} turn one point's drawings from end to end */
  show(turn) {
    this.turn = turn;
    this.bent = bent(turn.frames);
    this.along = turn.landmarks.map((places) => places[turn.handle]);
    this.shapes = turn.lines.map((line) => [line, s("polyline", { class: `line ${line.kind}` })]);
    fill(this.lines, this.shapes.map(([, shape]) => shape));
    mark(this.ground, "points", turn.ground.join(" "));
    mark(this.handle, "aria-label", t("{name}: drag, or use the arrow keys", turn));
    this.set(turn.start);
  }

  /** @param {number} t */
  set(t) {
    this.t = Math.min(Math.max(t, 0), 1);
    const places = placesAt(this.turn.landmarks, this.t);
    this.paths.forEach((path, index) => mark(path, "d", pathAt(this.bent[index], this.t)));
    const height = this.turn.ground[0][1];
    for (const [line, shape] of this.shapes) {
      mark(shape, "points", through(line, places, this.turn.ground, height).map((place) => place.map((n) => n.toFixed(1)).join()).join(" "));
    }
    const [x, y] = places[this.turn.handle];
    mark(this.handle, "cx", x.toFixed(1));
    mark(this.handle, "cy", y.toFixed(1));
    mark(this.handle, "aria-valuenow", Math.round(this.t * 100));
    this.moved(places, this.t);
  }

  #at(event) {
    const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(this.svg.getScreenCTM().inverse());
    return [point.x, point.y];
  }

  #down(event) {
    if (!this.turn || !event.isPrimary) return;
    const box = this.handle.getBoundingClientRect();
    const apart = Math.hypot(event.clientX - box.left - box.width / 2, event.clientY - box.top - box.height / 2);
    if (apart > 40) return;
    event.preventDefault();
    this.handle.focus({ preventScroll: true });
    this.svg.setPointerCapture(event.pointerId);
    this.#held = true;
    this.#follow(event);
  }

  #follow(event) {
    this.set(nearestT(this.along, this.#at(event)));
  }

  #key(event) {
    const by = { Home: -60, End: 60, ...KEYS }[event.key];
    if (!by) return;
    event.preventDefault();
    this.set(this.t + by * STEP * this.#way());
  }

  /** Keys to the right always make the measurement more. */
  #way() {
    return this.turn.rises ? 1 : -1;
  }
}
