// What is written of the class in hand: the merged sheets, how to change them, and how to take a change back.

import { change, sign } from "./changes.js";
import { latest } from "./latest.js";
import { merge, settled } from "./merge.js";

/** @typedef {import("./store.js").Store} Store */
/** @typedef {{merged: import("./merge.js").Merged, values: Map<string, any>, held: import("./replacing.js").Edit[]}} Read */

const EMPTY = { merged: null, values: new Map(), held: [] };
const MOST_UNDO = 200;

/** Event: "read" after sheets are read or changed; its detail lists the changes that a finger made just now. */
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
    store.addEventListener("changed", ({ detail }) => this.#refresh(this.#open.filter((sheet) => detail.has(sheet))));
  }

  /** Reads these sheets from the tablet and keeps them fresh. @param {string[]} sheets */
  async open(sheets) {
    this.#open = sheets;
    await this.#refresh(sheets);
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

  /** The edits of a field that wait outside the signature, replaced ones left out; the newest by the tablets' clocks first. */
  waiting(sheet, field) {
    const waiting = this.#of(sheet).held.filter((edit) => edit.field === field);
    const last = waiting.filter(({ id }) => !waiting.some((other) => other.id !== id && other.replaces.includes(id)));
    return last.sort((one, other) => Date.parse(other.made_at) - Date.parse(one.made_at));
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
    const back = changes.map(({ sheet, field }) => ({ sheet, field, value: latest(this, sheet, field) ?? null }));
    await this.#write(changes);
    this.#undo.push({ words, back });
    if (this.#undo.length > MOST_UNDO) this.#undo.shift();
    this.#tell(changes);
  }

  /** What the next undo takes back, in words; null where there is nothing. */
  get undoWords() {
    return this.#undo.at(-1)?.words ?? null;
  }

  /** The same, where the next undo is about this sheet. @param {string} sheet */
  undoWordsFor(sheet) {
    return this.#undo.at(-1)?.back.some((each) => each.sheet === sheet) ? this.undoWords : null;
  }

  async undo() {
    const last = this.#undo.pop();
    if (!last) return;
    await this.#write(last.back).catch((error) => {
      this.#undo.push(last);
      throw error;
    });
    this.#tell(last.back);
  }

  /** @param {string} sheet */
  async sign(sheet) {
    this.#take(sheet, await sign(this.#store, sheet));
    this.#tell();
  }

  async #write(changes) {
    try {
      for (const { sheet, field, value } of changes) await this.#change(sheet, field, value);
    } catch (error) {
      this.dispatchEvent(new CustomEvent("not-kept", { detail: changes }));
      throw error;
    }
  }

  /** The sheet is merged while the disk writes; the page shows it afterwards. */
  async #change(sheet, field, value) {
    let foreseen = null;
    const edits = await change(this.#store, sheet, field, value, (told) => { foreseen = { told, read: readOf(told) }; });
    this.#sheets.set(sheet, foreseen?.told === edits ? foreseen.read : readOf(edits));
  }

  #of(sheet) {
    return this.#sheets.get(sheet) ?? EMPTY;
  }

  async #refresh(sheets) {
    await Promise.all(sheets.map(async (sheet) => this.#take(sheet, await this.#store.edits(sheet))));
    this.#tell();
  }

  #take(sheet, edits) {
    this.#sheets.set(sheet, readOf(edits));
  }

  #tell(changes = []) {
    this.dispatchEvent(new CustomEvent("read", { detail: changes }));
  }
}

/** @param {import("./replacing.js").Edit[]} edits @returns {Read} */
function readOf(edits) {
  const merged = merge(edits);
  return { merged, values: settled(merged), held: edits.filter(({ id }) => merged.held.includes(id)) };
}
