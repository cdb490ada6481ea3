// What is marked on one photo: places by name, which is next, and the way back. Knows no page.

/** @typedef {[number, number]} Place  pixels of the picture, y downward */
/** @typedef {{code: string, name: string, where: string}} Landmark */

export const GROUND = ["ground-1", "ground-2"];

export class Marks {
  /** @type {Record<string, Place>[]} */
  #before = [];

  /** @param {string[]} steps names in the order of marking @param {Record<string, Place>} [places] */
  constructor(steps, places = {}) {
    this.steps = steps;
    this.places = { ...places };
    /** @type {Set<string>} */
    this.skipped = new Set();
    /** @type {string | null} the name that the next touch sets */
    this.current = this.#next();
  }

  get isDone() {
    return this.current === null;
  }

  get canUndo() {
    return this.#before.length > 0;
  }

  /** Remembers how it was, so that one undo takes a whole drag back. */
  begin() {
    this.#before.push({ ...this.places });
  }

  /** @param {string} name @param {Place} place */
  put(name, place) {
    this.places[name] = place;
  }

  /** The place is as wanted: on to the next name that has none. */
  confirm() {
    if (this.current) this.skipped.delete(this.current);
    this.current = this.#next();
  }

  /** @param {string} name */
  choose(name) {
    this.current = name;
  }

  skip() {
    if (this.current) this.skipped.add(this.current);
    this.current = this.#next();
  }

  undo() {
    const before = this.#before.pop();
    if (!before) return;
    const changed = this.steps.find((name) => String(this.places[name]) !== String(before[name]));
    this.places = before;
    this.current = changed && !(changed in before) ? changed : this.#next();
  }

  /** The landmarks alone, without the level line. @returns {Record<string, Place>} */
  get landmarks() {
    return Object.fromEntries(Object.entries(this.places).filter(([name]) => !GROUND.includes(name)));
  }

  /** @returns {[Place, Place] | null} */
  get ground() {
    const [one, other] = GROUND.map((name) => this.places[name]);
    return one && other ? [one, other] : null;
  }

  /** The name whose place lies nearest, no further than `reach`; null where there is none. */
  nearest([x, y], reach) {
    const near = Object.entries(this.places)
      .map(([name, [px, py]]) => ({ name, apart: Math.hypot(px - x, py - y) }))
      .filter(({ apart }) => apart <= reach)
      .sort((one, other) => one.apart - other.apart);
    return near[0]?.name ?? null;
  }

  #next() {
    return this.steps.find((name) => !(name in this.places) && !this.skipped.has(name)) ?? null;
  }
}

/**
 * A person's own click SD along each axis, from landmarks marked twice; null where none was.
 * The twin of scoring.measuring.repeats, Dahlberg 1940.
 */
export function ownClickSd(first, again) {
  const names = Object.keys(first).filter((name) => name in again);
  const squares = names.map((name) => (first[name][0] - again[name][0]) ** 2 + (first[name][1] - again[name][1]) ** 2);
  return names.length ? Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / (4 * names.length)) : null;
}
