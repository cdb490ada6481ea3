// A handle on IndexedDB that survives its connection: browsers drop connections of pages in the background.

const VERSION = 1;
const TRIES = 4;
const PAUSE_MS = 50;

export class Database {
  /** @type {Promise<IDBDatabase> | null} */
  #open = null;
  #name;
  #failed;
  /** @type {{names: string[], mode: string, kind: "full" | "failed"}[]} */
  #undone = [];

  /**
   * @param {string} name
   * @param {(detail: {full: boolean, error: any}) => void} failed called when the tries are used up
   */
  constructor(name, failed) {
    this.#name = name;
    this.#failed = failed;
  }

  /**
   * Does work in one transaction; resolves, with the `result` of what the work returns, only when that has completed.
   * After an error the handle is thrown away, a new one opened and the work done again, four times in all.
   * @param {string[]} names the tables
   * @param {"readonly" | "readwrite"} mode
   * @param {(table: (name: string) => IDBObjectStore) => {result: any} | void} work
   * @returns {Promise<any>}
   */
  async run(names, mode, work) {
    for (let tried = 1; ; tried += 1) {
      try {
        const done = await inTransaction(await this.#handle(), names, mode, work);
        this.#undone = this.#undone.filter((other) => !makesGood(names, mode, other));
        return done;
      } catch (error) {
        this.#drop();
        const full = error?.name === "QuotaExceededError";
        if (full || tried === TRIES) this.#giveUp(names, mode, full, error);
        await new Promise((resume) => setTimeout(resume, PAUSE_MS * tried));
      }
    }
  }

  /** "full" or "failed" after work that could not be done, until the same kind of work succeeds. */
  get trouble() {
    return this.#undone.at(-1)?.kind ?? null;
  }

  #giveUp(names, mode, full, error) {
    this.#undone.push({ names, mode, kind: full ? "full" : "failed" });
    this.#failed({ full, error });
    throw error;
  }

  #handle() {
    this.#open ??= openDatabase(this.#name, () => this.#drop());
    return this.#open;
  }

  #drop() {
    this.#open?.then((database) => database.close(), () => {});
    this.#open = null;
  }
}

/** A read that succeeds says nothing of a write that did not. */
function makesGood(names, mode, undone) {
  return undone.names.every((name) => names.includes(name)) && (mode === "readwrite" || undone.mode === mode);
}

/** @param {string} name @param {() => void} lost @returns {Promise<IDBDatabase>} */
function openDatabase(name, lost) {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(name, VERSION);
    request.onupgradeneeded = () => layOut(request.result);
    request.onerror = () => reject(request.error);
    request.onsuccess = () => {
      request.result.onclose = lost;
      request.result.onversionchange = lost;
      resolve(request.result);
    };
  });
}

/** @param {IDBDatabase} database */
function layOut(database) {
  database.createObjectStore("edits", { keyPath: "id" }).createIndex("sheet", "sheet");
  database.createObjectStore("values", { keyPath: ["sheet", "field"] }).createIndex("sheet", "sheet");
  database.createObjectStore("outbox", { keyPath: "id" });
  database.createObjectStore("refused", { keyPath: "id" });
  database.createObjectStore("notes");
}

function inTransaction(database, names, mode, work) {
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(names, mode, { durability: "strict" });
    const said = work((name) => transaction.objectStore(name));
    transaction.oncomplete = () => resolve(said?.result);
    transaction.onabort = () => reject(transaction.error ?? new DOMException("The connection was lost.", "AbortError"));
  });
}
