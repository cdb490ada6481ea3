// What to touch next: its name, where to feel for it, and a small drawing that shows where it lies.

import { fill, h, mark, s } from "../../ring/dom.js";
import { t } from "../../ring/say.js";
import { GROUND } from "./marks.js";

const level = () => ({
  "ground-1": [t("level line, first end"), t("any spot of level ground on the left, as far out as you can see it")],
  "ground-2": [t("level line, other end"), t("the same level ground on the right")],
});

export class Guide {
  /** @param {any} view one of the page's views */
  constructor(view) {
    this.named = new Map(view.landmarks.map((landmark) => [landmark.code, [landmark.name, landmark.where]]));
    this.scheme = view.scheme;
    this.ring = s("circle", { class: "here", r: view.scheme.size[0] * 0.035 });
    this.words = h("p", { class: "step", role: "status" });
    this.element = h("div", { class: "guide" }, this.#drawing(), this.words);
  }

  /** @param {string} name @returns {string} */
  name(name) {
    return (level()[name] ?? this.named.get(name))[0];
  }

  /** @param {string | null} name @param {number} done @param {number} all */
  show(name, done, all) {
    mark(this.ring, "hidden", name === null);
    if (name === null) {
      fill(this.words, h("strong", {}, t("All points are set.")), " ", t("Drag any of them to correct it, or choose it by name below."));
      return;
    }
    const [title, where] = level()[name] ?? this.named.get(name);
    const [x, y] = this.#place(name);
    mark(this.ring, "cx", x);
    mark(this.ring, "cy", y);
    fill(this.words, h("span", { class: "count num" }, t("{done} of {all}", { done: done + 1, all })), h("strong", {}, title), ` ${where}`);
  }

  #place(name) {
    const [wide, high] = this.scheme.size;
    const feet = Object.entries(this.scheme.places).filter(([code]) => code.includes("foot"));
    const low = Math.max(...feet.map(([, place]) => place[1]));
    if (!GROUND.includes(name)) return this.scheme.places[name];
    return [name === "ground-1" ? wide * 0.08 : wide * 0.92, Math.min(low, high * 0.97)];
  }

  #drawing() {
    const [wide, high] = this.scheme.size;
    const [left, right] = GROUND.map((name) => this.#place(name));
    const paths = this.scheme.paths.map(([d, kind]) => s("path", { d, class: kind }));
    const floor = s("path", { class: "level", d: `M${left}L${right}` });
    return s("svg", { class: "scheme", viewBox: `0 0 ${wide} ${high}`, "aria-hidden": "true" }, floor, paths, this.ring);
  }
}
