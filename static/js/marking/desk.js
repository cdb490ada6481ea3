// The marking itself: the photo, what to touch next, the numbers, and what becomes of it.

import { fill, h, mark } from "../../ring/dom.js";
import { decimal, t } from "../../ring/say.js";
import { keep } from "./drafts.js";
import { Guide } from "./guide.js";
import { GROUND, Marks, ownClickSd } from "./marks.js";
import { Numbers } from "./numbers.js";
import { Stage } from "./stage.js";

const LEAST_SD_PX = 0.5;
const nudges = () => [["←", -1, 0, t("One pixel left")], ["↑", 0, -1, t("One pixel up")], ["↓", 0, 1, t("One pixel down")], ["→", 1, 0, t("One pixel right")]];

export class Desk {
  /** @param {any} page @param {import("./drafts.js").Draft} draft @param {string} address of the picture @param {{finished: () => void, unkept: () => void}} tell */
  constructor(page, draft, address, tell) {
    Object.assign(this, { page, draft, address, tell });
    this.view = page.views.find((view) => view.code === draft.view);
    this.clickSd = Math.max(page.clickSdOfWidth * draft.width, LEAST_SD_PX);
    this.element = h("div", { class: "desk" });
    this.#lay([...GROUND, ...this.view.landmarks.map((one) => one.code)], draft.places, false);
  }

  #lay(steps, places, isAgain) {
    this.isAgain = isAgain;
    this.marks = new Marks(steps, places);
    this.guide = new Guide(this.view);
    this.numbers = new Numbers(this.view);
    const picture = { address: this.address, width: this.draft.width, height: this.draft.height };
    const tell = { moved: () => this.#moved(), settled: () => this.#settled() };
    this.stage = new Stage(picture, isAgain ? [] : this.view.lines, this.marks, tell);
    this.after = h("div", { class: "stack after" });
    this.chips = h("div", { class: "chips", role: "group", "aria-label": t("Points") });
    this.undo = this.#button(t("Undo"), () => this.#back());
    this.skip = this.#button(t("Cannot see it"), () => this.#pass());
    const bar = h("div", { class: "bar tools" }, this.undo, this.skip, nudges().map((one) => this.#nudge(one)));
    const named = h("details", {}, h("summary", {}, t("Choose a point by its name")), this.chips);
    const side = h("div", { class: "stack side" }, this.after, isAgain ? null : this.numbers.element, named);
    fill(this.element, h("div", { class: "hand" }, this.guide.element, h("div", { class: "sheet" }, this.stage.svg, this.stage.lens.svg), bar), side);
    this.#shown();
    // The picture's size on the screen is known only once it stands there.
    new ResizeObserver(() => this.stage.draw()).observe(this.stage.svg);
  }

  #button(words, does) {
    return h("button", { type: "button", class: "plain", onclick: does }, words);
  }

  #nudge([sign, dx, dy, words]) {
    const move = () => this.stage.nudge(dx, dy);
    return h("button", { type: "button", class: "plain nudge", "aria-label": words, onclick: move }, sign);
  }

  /** A mark has moved: the numbers follow within this very frame. */
  #moved() {
    this.numbers.show(this.marks, this.clickSd);
  }

  #settled() {
    this.#save();
    this.#shown();
  }

  #back() {
    this.marks.undo();
    this.#settled();
  }

  #pass() {
    this.marks.skip();
    this.#shown();
  }

  async #save() {
    if (this.isAgain) this.draft.again = this.marks.landmarks;
    else this.draft.places = { ...this.marks.places };
    if (this.draft.state === "refused") this.draft.state = "marking";
    await keep(this.draft).catch(this.tell.unkept);
  }

  #shown() {
    const { marks } = this;
    const done = marks.steps.filter((name) => name in marks.places || marks.skipped.has(name)).length;
    this.guide.show(marks.current, Math.min(done, marks.steps.length - 1), marks.steps.length);
    this.stage.draw();
    this.#moved();
    this.undo.disabled = !marks.canUndo;
    this.skip.disabled = marks.isDone;
    fill(this.chips, marks.steps.filter((name) => name in marks.places || marks.skipped.has(name)).map((name) => this.#chip(name)));
    fill(this.after, marks.isDone ? this.#afterwards() : null);
  }

  #chip(name) {
    const choose = () => {
      this.marks.choose(name);
      this.#shown();
    };
    const chip = h("button", { type: "button", class: "chip", onclick: choose }, this.guide.name(name));
    mark(chip, "aria-pressed", String(this.marks.current === name));
    if (!(name in this.marks.places)) chip.append(`: ${t("not seen")}`);
    return chip;
  }

  #afterwards() {
    if (this.isAgain) return this.#steadiness();
    const day = h("input", { type: "date", id: "taken-on", value: this.draft.takenOn });
    const height = h("input", { type: "number", id: "height", min: "10", max: "120", step: "0.5", inputmode: "decimal", value: this.draft.withersHeight });
    const finish = () => this.#finish({ takenOn: day.value, withersHeight: height.value });
    return [
      h("div", { class: "pair" }, field(t("Taken on"), day), field(t("Height at the withers in cm, if you know it"), height)),
      h("div", { class: "bar" }, h("button", { type: "button", onclick: finish }, t("Keep and read")), this.#button(t("Mark it a second time"), () => this.#again())),
      h("p", { class: "help" }, t("Marked twice, the photo tells how steady your own finger is; all your readings then use it.")),
    ];
  }

  #steadiness() {
    const sd = ownClickSd(this.draft.places, this.draft.again);
    const words = t("Your two markings lie apart as if each click erred by {pixels} pixels of {width}.", { pixels: sd === null || sd === undefined ? "?" : decimal(sd), width: this.draft.width });
    return [h("p", { class: "lead" }, words), h("button", { type: "button", onclick: () => this.#once(sd) }, t("Use this from now on"))];
  }

  #again() {
    this.#lay(Object.keys(this.marks.landmarks), {}, true);
  }

  #once(sd) {
    this.clickSd = Math.max(sd ?? this.clickSd, LEAST_SD_PX);
    this.page.clickSdOfWidth = this.clickSd / this.draft.width; // for the next photo as well, without the server
    this.#lay([...GROUND, ...this.view.landmarks.map((one) => one.code)], this.draft.places, false);
  }

  async #finish(more) {
    Object.assign(this.draft, more, { state: "waiting", reason: "" });
    await keep(this.draft).catch(this.tell.unkept);
    this.tell.finished();
  }
}

function field(words, input) {
  return h("div", {}, h("label", { for: input.id }, words), input);
}
