// The magnifier: what lies under the finger, three times as large, in the corner where the finger is not.

import { mark, s } from "../../ring/dom.js";

const TIMES = 3;
const SIDE_PX = 128;

export class Lens {
  /** @param {string} address of the picture @param {number} width @param {number} height */
  constructor(address, width, height) {
    this.image = s("image", { href: address, width, height });
    this.cross = s("path", { class: "cross" });
    this.svg = s("svg", { class: "lens", hidden: true, "aria-hidden": "true" }, this.image, this.cross);
  }

  /** @param {import("./marks.js").Place} place @param {number} pixel @param {boolean} onLeft whether the finger is on the left */
  show([x, y], pixel, onLeft) {
    const half = (SIDE_PX * pixel) / TIMES / 2;
    mark(this.svg, "viewBox", `${x - half} ${y - half} ${2 * half} ${2 * half}`);
    const gap = half * 0.12;
    mark(
      this.cross,
      "d",
      `M${x - half},${y}H${x - gap}M${x + gap},${y}H${x + half}M${x},${y - half}V${y - gap}M${x},${y + gap}V${y + half}`,
    );
    mark(this.svg, "data-side", onLeft ? "right" : "left");
    mark(this.svg, "hidden", false);
  }

  hide() {
    mark(this.svg, "hidden", true);
  }
}
