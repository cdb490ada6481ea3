// Photos and marks that are on this device only, kept in IndexedDB until the server has them.

const NAME = "ringside-photos";
const TABLE = "drafts";
const TRIES = 4;
const PAUSE_MS = 60;

/**
 * @typedef {object} Draft
 * @property {string} id  a UUID made here, under which the server keeps the photo once
 * @property {string} dogName
 * @property {string} send  where it is sent
 * @property {string} view
 * @property {ArrayBuffer | null} bytes  null where the server has the picture already
 * @property {number} width
 * @property {number} height
 * @property {Record<string, [number, number]>} places
 * @property {Record<string, [number, number]>} again  the landmarks, marked a second time
 * @property {string} takenOn
 * @property {string} withersHeight
 * @property {"marking" | "waiting" | "refused"} state
 * @property {string} reason  why it was refused
 */

/** What the device had no room for: it lives as long as this page, and is sent from here. @type {Map<string, Draft>} */
const unkept = new Map();

/** @returns {Promise<Draft[]>} */
export async function drafts() {
  const kept = await run("readonly", (table) => table.getAll()).catch((error) => {
    if (!unkept.size) throw error;
    return [];
  });
  return [...kept.filter(({ id }) => !unkept.has(id)), ...unkept.values()];
}

/** Resolves once the draft is safe on this device; rejects where only this page has it. @param {Draft} draft */
export async function keep(draft) {
  try {
    await run("readwrite", (table) => table.put(draft));
    unkept.delete(draft.id);
  } catch (error) {
    unkept.set(draft.id, draft);
    throw error;
  }
}

/** Whether a draft, or without an id everything, outlives this page. @param {string} [id] */
export const isSafe = (id) => (id ? !unkept.has(id) : unkept.size === 0);

/** @param {string} id @returns {Promise<Draft | undefined>} */
export const draft = async (id) => unkept.get(id) ?? run("readonly", (table) => table.get(id));

/** @param {string} id */
export function forget(id) {
  unkept.delete(id);
  return run("readwrite", (table) => table.delete(id));
}

/** Browsers drop connections of pages in the background, so that each piece of work opens its own, and tries again. */
async function run(mode, work) {
  for (let tried = 1; ; tried += 1) {
    try {
      return await once(mode, work);
    } catch (error) {
      if (tried === TRIES || error?.name === "QuotaExceededError") throw error;
      await new Promise((resume) => setTimeout(resume, PAUSE_MS * tried));
    }
  }
}

async function once(mode, work) {
  const database = await opened();
  try {
    return await new Promise((resolve, reject) => {
      const transaction = database.transaction(TABLE, mode, { durability: "strict" });
      const request = work(transaction.objectStore(TABLE));
      transaction.oncomplete = () => resolve(request.result);
      transaction.onabort = () => reject(transaction.error ?? new DOMException("The connection was lost.", "AbortError"));
    });
  } finally {
    database.close();
  }
}

/** @returns {Promise<IDBDatabase>} */
function opened() {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(TABLE, { keyPath: "id" });
    request.onerror = () => reject(request.error);
    request.onsuccess = () => resolve(request.result);
  });
}

/** A version 4 UUID (RFC 9562, 5.4); `crypto.randomUUID` needs a secure address, this does not. */
export function newId() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6] & 0x0f) | 0x40;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
  return hex.replace(/(.{8})(.{4})(.{4})(.{4})(.{12})/, "$1-$2-$3-$4-$5");
}
