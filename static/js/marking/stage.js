// The picture under the finger: touch sets the next mark, drag moves it, arrow keys move it by pixels.

import { mark, s } from "../../ring/dom.js";
import { t } from "../../ring/say.js";
import { Lens } from "./lens.js";
import { Overlay } from "./overlay.js";

/** @typedef {import("./marks.js").Marks} Marks */

const REACH_PX = 40;
const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

export class Stage {
  #held = null;
  /** From the finger to the mark that it drags: a mark never jumps under the finger that corrects it. */
  #apart = [0, 0];

  /**
   * @param {{address: string, width: number, height: number}} picture
   * @param {import("./lines.js").Line[]} lines
   * @param {Marks} marks
   * @param {{moved: () => void, settled: () => void}} tell moved: within the frame; settled: a mark is where it shall be
   */
  constructor(picture, lines, marks, tell) {
    this.picture = picture;
    this.marks = marks;
    this.tell = tell;
    this.lens = new Lens(picture.address, picture.width, picture.height);
    this.svg = s(
      "svg",
      {
        class: "stage", viewBox: `0 0 ${picture.width} ${picture.height}`, tabindex: "0", role: "application",
        "aria-label": t("The photo. Arrow keys move the mark, Shift by ten pixels, Enter sets it."),
      },
      s("image", { href: picture.address, width: picture.width, height: picture.height }),
    );
    this.overlay = new Overlay(this.svg, lines, picture.height);
    this.svg.addEventListener("pointerdown", (event) => this.#down(event));
    this.svg.addEventListener("pointermove", (event) => this.#move(event));
    this.svg.addEventListener("pointerup", () => this.#up());
    this.svg.addEventListener("pointercancel", () => this.#up());
    this.svg.addEventListener("keydown", (event) => this.#key(event));
  }

  /** Picture pixels of one pixel on the screen. */
  get pixel() {
    const box = this.svg.getBoundingClientRect();
    return Math.max(this.picture.width / (box.width || 1), this.picture.height / (box.height || 1));
  }

  draw() {
    this.overlay.draw(this.marks, this.#held, this.pixel);
    const waits = this.marks.current && !(this.marks.current in this.marks.places);
    mark(this.svg, "data-waits", waits ? this.marks.current : null);
  }

  /** Moves the mark in hand, by picture pixels. */
  nudge(dx, dy) {
    const name = this.marks.current ?? this.last;
    if (!name) return;
    const [x, y] = this.marks.places[name] ?? this.#start();
    this.marks.begin();
    this.#put(name, [x + dx, y + dy]);
    this.last = name;
    if (!this.marks.current) this.tell.settled();
  }

  #start() {
    return this.marks.places[this.last] ?? [this.picture.width / 2, this.picture.height / 2];
  }

  #put(name, [x, y]) {
    const { width, height } = this.picture;
    this.marks.put(name, [Math.min(Math.max(x, 0), width), Math.min(Math.max(y, 0), height)]);
    this.draw();
    this.tell.moved();
  }

  #at(event) {
    const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(this.svg.getScreenCTM().inverse());
    return [point.x, point.y];
  }

  #down(event) {
    if (!event.isPrimary || event.button > 0) return;
    event.preventDefault();
    this.svg.focus({ preventScroll: true });
    const at = this.#at(event);
    this.#held = this.marks.current ?? this.marks.nearest(at, REACH_PX * this.pixel);
    if (!this.#held) return;
    this.svg.setPointerCapture(event.pointerId);
    this.marks.begin();
    const corrected = this.marks.current ? null : this.marks.places[this.#held];
    this.#apart = corrected ? [corrected[0] - at[0], corrected[1] - at[1]] : [0, 0];
    this.#drag(event);
  }

  #move(event) {
    if (this.#held) this.#drag(event);
  }

  #drag(event) {
    const [x, y] = this.#at(event);
    this.#put(this.#held, [x + this.#apart[0], y + this.#apart[1]]);
    const box = this.svg.getBoundingClientRect();
    this.lens.show(this.marks.places[this.#held], this.pixel, event.clientX < box.left + box.width / 2);
  }

  #up() {
    if (!this.#held) return;
    this.last = this.#held;
    this.#held = null;
    this.lens.hide();
    this.marks.confirm();
    this.draw();
    this.tell.settled();
  }

  #key(event) {
    const way = ARROWS[event.key];
    if (way) this.nudge(way[0] * (event.shiftKey ? 10 : 1), way[1] * (event.shiftKey ? 10 : 1));
    else if (event.key === "Enter" && this.marks.current in this.marks.places) this.#set();
    else return;
    event.preventDefault();
  }

  #set() {
    this.marks.confirm();
    this.draw();
    this.tell.settled();
  }
}
