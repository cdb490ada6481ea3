// What this tablet keeps, in IndexedDB. "Kept" is only said when the transaction has completed.

import { Database } from "./database.js";
import { counts } from "./merge.js";
import { newId } from "./ids.js";
import { Memory } from "./memory.js";

/** @typedef {import("./replacing.js").Edit} Edit */
/** @typedef {{id: string, edit: Edit, reason: string}} Refused */
/** @typedef {{sheet: string, field: string, value: any, over?: any}} Draft what is being typed and is no edit yet, over what stood there */

const WRITER = "writer";
/** The tables that an edit is kept in, and where it is noted who wrote; and that of what is being typed. */
const EDITING = ["edits", "outbox", "notes"];
const DRAFTS = "values";

/**
 * Events: "kept" after an edit is kept, "changed" (detail: a Set of the sheets whose edits changed) after the server's
 * edits or answers are, "storage-failed" (detail `{full, error}`) when four tries were not enough.
 */
export class Store extends EventTarget {
  #database;
  #memory = new Memory();
  /** The fields of which there may be a draft: an edit ends it. @type {Set<string>} */
  #drafted = new Set();
  /** This page among the windows of the tablet. */
  #page = newId();

  /** @param {string} [name] */
  constructor(name = "ring") {
    super();
    this.#database = new Database(name, (detail) => {
      this.dispatchEvent(new CustomEvent("storage-failed", { detail }));
    });
  }

  /** "full" or "failed" after something could not be kept or read, until the like succeeds. */
  get trouble() {
    return this.#database.trouble;
  }

  /**
   * Keeps one edit in one transaction, which ends the field's draft, and resolves when it is on the disk, with all
   * edits of the sheet, the new one last: a mark is to show without another look at the disk.
   * The edit is made from what this page remembers of the sheet and put at once; where another window of this tablet
   * turns out to have written since, it is made once more from what stands on the disk, itself among it.
   * @param {string} sheet
   * @param {(edits: Edit[], unsent: Set<string>) => Edit} write makes the edit from the sheet's edits, without waiting
   * @param {(edits: Edit[]) => void} [foresee] gets what is resolved with, as far as can be told, while the disk writes
   * @returns {Promise<Edit[]>}
   */
  async set(sheet, write, foresee) {
    const believed = this.#memory.of(sheet);
    const edits = await this.#memory.aside(async () => {
      const kept = (believed && await this.#keepAtOnce(believed, write, foresee)) ?? await this.#keepAfterReading(sheet, write);
      this.#memory.set(sheet, kept);
      this.#memory.wait(kept.at(-1).id);
      return kept;
    });
    // Sending waits its turn behind the mark: it reads the same tables.
    setTimeout(() => this.dispatchEvent(new Event("kept")));
    return edits;
  }

  /** Null where what was believed was not so: the edit is on the disk all the same. @returns {Promise<Edit[] | null>} */
  async #keepAtOnce(believed, write, foresee) {
    const edit = write(believed.edits, believed.unsent);
    const edits = [...believed.edits, edit];
    const isSo = await this.#database.run(this.#tablesOf(edit), "readwrite", (table) => {
      const told = { result: false };
      const last = table("notes").get(WRITER);
      last.onsuccess = () => { told.result = last.result === this.#page; };
      this.#put(table, edit);
      // Nothing waits for an answer any more: one way to the disk less.
      last.transaction.commit();
      foresee?.(edits);
      return told;
    });
    return isSo ? edits : null;
  }

  #keepAfterReading(sheet, write) {
    return this.#database.run([...EDITING, DRAFTS], "readwrite", (table) => {
      const made = { result: undefined };
      this.#lastToWrite(table);
      const unsent = table("outbox").getAllKeys();
      const seen = table("edits").index("sheet").getAll(sheet);
      seen.onsuccess = () => {
        const edit = write(seen.result, new Set(unsent.result));
        this.#put(table, edit);
        made.result = [...seen.result, edit];
        this.#memory.waits(unsent.result);
      };
      return made;
    });
  }

  #tablesOf({ sheet, field }) {
    return this.#drafted.has(draftKey(sheet, field)) ? [...EDITING, DRAFTS] : EDITING;
  }

  #put(table, edit) {
    table("edits").put(edit);
    table("outbox").put(edit);
    if (this.#drafted.has(draftKey(edit.sheet, edit.field))) table(DRAFTS).delete([edit.sheet, edit.field]);
  }

  /** Keeps a value that is still being typed, over what the field says. @param {string} sheet @param {string} field @param {any} value @param {any} [over] */
  draft(sheet, field, value, over) {
    this.#drafted.add(draftKey(sheet, field));
    return this.#write(DRAFTS, (drafts) => drafts.put({ sheet, field, value, ...(over ? { over } : {}) }));
  }

  /** What was being typed into the sheet's fields when this tablet last heard of it. @param {string} sheet @returns {Promise<Draft[]>} */
  async drafts(sheet) {
    const found = await this.#read(DRAFTS, (drafts) => drafts.index("sheet").getAll(sheet));
    for (const { field } of found) this.#drafted.add(draftKey(sheet, field));
    return found;
  }

  /** @param {string} sheet @returns {Promise<Edit[]>} */
  async edits(sheet) {
    const edits = await this.#read("edits", (table) => table.index("sheet").getAll(sheet));
    this.#memory.set(sheet, edits);
    return edits;
  }

  /** The edits that the server keeps aside until somebody decides. @returns {Promise<Edit[]>} */
  async held() {
    const edits = await this.#read("edits", (table) => table.getAll());
    return edits.filter(({ state }) => state === "held");
  }

  /** The edits that no server has answered for. @returns {Promise<Edit[]>} */
  unsent() {
    return this.#read("outbox", (outbox) => outbox.getAll());
  }

  /** The edits that the server refused, with the reason, text and all. @returns {Promise<Refused[]>} */
  refused() {
    return this.#read("refused", (refused) => refused.getAll());
  }

  /** Forgets a refused edit, once a person has seen it. @param {string} id */
  forgetRefused(id) {
    return this.#write("refused", (refused) => refused.delete(id));
  }

  /**
   * Takes what the server said, in one transaction: answered edits leave the outbox, refused ones move aside, the
   * server's edits come in, and the place to ask from moves on.
   * @param {{answered: Edit[], refused: Refused[], edits: Edit[], since: string, sequence: number}} said
   */
  async take({ answered, refused, edits, since, sequence }) {
    const sheets = new Set([...edits, ...refused.map(({ edit }) => edit)].map(({ sheet }) => sheet));
    const keep = (table) => {
      this.#lastToWrite(table);
      for (const { id } of answered) table("outbox").delete(id);
      for (const row of refused) {
        table("outbox").delete(row.id);
        table("edits").delete(row.id);
        table("refused").put(row);
      }
      for (const edit of edits) {
        table("edits").put(edit);
        // Refused to this tablet, and taken in since from somebody who may.
        if (counts(edit)) table("refused").delete(edit.id);
      }
      table("notes").put(sequence, since);
      return table("outbox").getAllKeys();
    };
    await this.#memory.aside(async () => {
      this.#memory.waits(await this.#database.run(["edits", "outbox", "refused", "notes"], "readwrite", keep));
      sheets.forEach((sheet) => this.#memory.forget(sheet));
    });
    if (answered.length || sheets.size) this.dispatchEvent(new CustomEvent("changed", { detail: sheets }));
  }

  /** @param {string} name @returns {Promise<any>} */
  recall(name) {
    return this.#read("notes", (notes) => notes.get(name));
  }

  /** Keeps a value under a name, in the place of what was there. @param {string} name @param {any} value */
  note(name, value) {
    return this.#write("notes", (notes) => notes.put(value, name));
  }

  /** The note of this name; where there is none, this value from now on. @param {string} name @param {any} value */
  keep(name, value) {
    return this.#write("notes", (notes) => {
      const kept = { result: value };
      const found = notes.get(name);
      found.onsuccess = () => {
        if (found.result === undefined) notes.put(value, name);
        else kept.result = found.result;
      };
      return kept;
    });
  }

  /**
   * Notes inside a transaction that this page now writes edits. What it remembers is what stands on the disk for as long
   * as it was itself the last to write.
   * @param {(name: string) => IDBObjectStore} table
   */
  #lastToWrite(table) {
    const last = table("notes").get(WRITER);
    table("notes").put(this.#page, WRITER);
    last.onsuccess = () => {
      if (last.result !== this.#page) this.#memory.clear();
    };
  }

  #read(name, work) {
    return this.#database.run([name], "readonly", (table) => work(table(name)));
  }

  #write(name, work) {
    return this.#database.run([name], "readwrite", (table) => work(table(name)));
  }
}

function draftKey(sheet, field) {
  return `${sheet} ${field}`;
}
