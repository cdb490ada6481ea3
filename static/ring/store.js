// What this tablet keeps, in IndexedDB. "Kept" is only said when the transaction has completed.

import { Database } from "./database.js";

/** @typedef {import("./replacing.js").Edit} Edit */
/** @typedef {{id: string, edit: Edit, reason: string}} Refused */
/** @typedef {{sheet: string, field: string, value: any, edit: string | null}} Kept `edit` is null for a draft */

/**
 * Events: "kept" after an edit is kept, "changed" after the server's edits or answers are, "storage-failed" (detail
 * `{full, error}`) when four tries were not enough.
 */
export class Store extends EventTarget {
  #database;

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
   * Keeps one edit and the value it sets, in one transaction, and resolves with the edit when both are on the disk.
   * `write` is called inside that transaction, so that no other window of this tablet can come between.
   * @param {string} sheet
   * @param {(edits: Edit[], unsent: Set<string>) => Edit} write makes the edit from the sheet's edits, without waiting
   * @returns {Promise<Edit>}
   */
  async set(sheet, write) {
    const edit = await this.#database.run(["edits", "outbox", "values"], "readwrite", (table) => {
      const made = { result: undefined };
      const seen = table("edits").index("sheet").getAll(sheet);
      const unsent = table("outbox").getAllKeys();
      unsent.onsuccess = () => {
        const edit = write(seen.result, new Set(unsent.result));
        table("edits").put(edit);
        table("outbox").put(edit);
        table("values").put({ sheet: edit.sheet, field: edit.field, value: edit.value, edit: edit.id });
        made.result = edit;
      };
      return made;
    });
    this.dispatchEvent(new Event("kept"));
    return edit;
  }

  /** Keeps a value that is still being typed. @param {string} sheet @param {string} field @param {any} value */
  draft(sheet, field, value) {
    return this.#write("values", (values) => values.put({ sheet, field, value, edit: null }));
  }

  /** What this tablet last put into the sheet's fields, drafts among it. @param {string} sheet @returns {Promise<Kept[]>} */
  values(sheet) {
    return this.#read("values", (values) => values.index("sheet").getAll(sheet));
  }

  /** @param {string} sheet @returns {Promise<Edit[]>} */
  edits(sheet) {
    return this.#read("edits", (edits) => edits.index("sheet").getAll(sheet));
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
    await this.#database.run(["edits", "outbox", "refused", "notes"], "readwrite", (table) => {
      for (const { id } of answered) table("outbox").delete(id);
      for (const row of refused) {
        table("outbox").delete(row.id);
        table("edits").delete(row.id);
        table("refused").put(row);
      }
      for (const edit of edits) table("edits").put(edit);
      table("notes").put(sequence, since);
    });
    if (answered.length || refused.length || edits.length) this.dispatchEvent(new Event("changed"));
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

  #read(name, work) {
    return this.#database.run([name], "readonly", (table) => work(table(name)));
  }

  #write(name, work) {
    return this.#database.run([name], "readwrite", (table) => work(table(name)));
  }
}
