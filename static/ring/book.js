// What is written of the class in hand: the merged sheets, how to change them, and how to take a change back.

import { change, sign } from "./changes.js";
import { merge, settled } from "./merge.js";

/** @typedef {import("./store.js").Store} Store */
/** @typedef {{merged: import("./merge.js").Merged, values: Map<string, any>}} Read */

const EMPTY = { merged: null, values: new Map() };
const MOST_UNDO = 200;

export class Book extends EventTarget {
  #store;
  /** @type {Map<string, Read>} */
  #sheets = new Map();
  /** @type {string[]} */
  #open = [];
  /** @type {{words: string, back: {sheet: string, field: string, value: any}[]}[]} */
  #undo = [];

  /** @param {Store} store */
  constructor(store) {
    super();
    this.#store = store;
    store.addEventListener("changed", () => this.refresh());
  }

  /** Reads these sheets from the tablet and keeps them fresh. @param {string[]} sheets */
  async open(sheets) {
    this.#open = sheets;
    await this.refresh();
  }

  async refresh() {
    await Promise.all(this.#open.map((sheet) => this.#read(sheet)));
    this.#tell();
  }

  /** The settled value; undefined where nothing is set, or where two devices disagree. */
  value(sheet, field) {
    const value = this.#of(sheet).values.get(field);
    return value === null ? undefined : value;
  }

  /** @param {string} sheet @returns {Map<string, any>} every settled field that is not empty */
  values(sheet) {
    return new Map([...this.#of(sheet).values].filter(([, value]) => value !== null));
  }

  /** The values that devices disagree on, each once with one edit that says it; empty where they do not. */
  disputed(sheet, field) {
    const { merged } = this.#of(sheet);
    return merged?.disputed.includes(field) ? merged.fields.get(field) : [];
  }

  /** The edits that say a field's value now. @param {string} sheet @param {string} field */
  edits(sheet, field) {
    return this.#of(sheet).merged?.fields.get(field) ?? [];
  }

  /** @param {string} sheet @returns {string[]} */
  disputes(sheet) {
    return [...(this.#of(sheet).merged?.disputed ?? [])];
  }

  isSigned(sheet) {
    const { merged } = this.#of(sheet);
    return Boolean(merged && merged.signedBy.length && !merged.pending.length);
  }

  /** How many edits wait outside the signature. */
  held(sheet) {
    return this.#of(sheet).merged?.held.length ?? 0;
  }

  /**
   * Sets a field; the page shows it once the tablet has kept it. `words` tell what undo would take back.
   * @param {string} sheet @param {string} field @param {any} value @param {string} words
   */
  set(sheet, field, value, words) {
    return this.setAll([{ sheet, field, value }], words);
  }

  /** Sets several fields, which one undo takes back together. @param {{sheet: string, field: string, value: any}[]} changes */
  async setAll(changes, words) {
    const back = changes.map(({ sheet, field }) => ({ sheet, field, value: this.value(sheet, field) ?? null }));
    await this.#write(changes);
    this.#undo.push({ words, back });
    if (this.#undo.length > MOST_UNDO) this.#undo.shift();
  }

  /** What the next undo takes back, in words; null where there is nothing. */
  get undoWords() {
    return this.#undo.at(-1)?.words ?? null;
  }

  async undo() {
    const last = this.#undo.pop();
    if (last) await this.#write(last.back);
  }

  /** @param {string} sheet */
  async sign(sheet) {
    await sign(this.#store, sheet);
    await this.#read(sheet);
    this.#tell();
  }

  async #write(changes) {
    for (const { sheet, field, value } of changes) await change(this.#store, sheet, field, value);
    await Promise.all([...new Set(changes.map(({ sheet }) => sheet))].map((sheet) => this.#read(sheet)));
    this.#tell();
  }

  #of(sheet) {
    return this.#sheets.get(sheet) ?? EMPTY;
  }

  async #read(sheet) {
    const merged = merge(await this.#store.edits(sheet));
    this.#sheets.set(sheet, { merged, values: settled(merged) });
  }

  #tell() {
    this.dispatchEvent(new Event("read"));
  }
}
