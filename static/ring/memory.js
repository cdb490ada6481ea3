// What this page remembers of the tablet's disk, so that a tap need not read it first. It begins with a write of this
// page's own, and whoever uses it asks the disk whether another window has written since.

/** @typedef {import("./replacing.js").Edit} Edit */
/** @typedef {{edits: Edit[], unsent: Set<string>}} Believed a sheet's edits, and the ids no server has answered for */

export class Memory {
  /** @type {Map<string, Edit[]>} */
  #sheets = new Map();
  /** @type {Set<string> | null} */
  #unsent = null;
  /** How many writes of this page are on their way to the disk. */
  #writing = 0;

  /**
   * Does a write, which takes in what it wrote before it ends; until then nothing is remembered for another.
   * @template Kept @param {() => Promise<Kept>} write @returns {Promise<Kept>}
   */
  async aside(write) {
    this.#writing += 1;
    try {
      return await write();
    } finally {
      this.#writing -= 1;
    }
  }

  /** Null where either is not known. @param {string} sheet @returns {Believed | null} */
  of(sheet) {
    const edits = this.#sheets.get(sheet);
    return edits && this.#unsent && !this.#writing ? { edits, unsent: this.#unsent } : null;
  }

  /** @param {string} sheet @param {Edit[]} edits */
  set(sheet, edits) {
    this.#sheets.set(sheet, edits);
  }

  /** @param {string} sheet */
  forget(sheet) {
    this.#sheets.delete(sheet);
  }

  /** @param {Iterable<string>} ids all that wait to be sent */
  waits(ids) {
    this.#unsent = new Set(ids);
  }

  /** @param {string} id one more that waits */
  wait(id) {
    this.#unsent?.add(id);
  }

  clear() {
    this.#sheets.clear();
    this.#unsent = null;
  }
}
