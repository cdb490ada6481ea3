// Ids made on this tablet. `crypto.getRandomValues` works without a secure address, `randomUUID` does not.

/** @typedef {import("./store.js").Store} Store */

/**
 * A fresh id: 128 random bits as 22 letters, digits, _ or -.
 * @returns {string}
 */
export function newId() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  const base64 = btoa(String.fromCharCode(...bytes));
  return base64.replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
}

/** @type {WeakMap<Store, Promise<string>>} asked for with every mark, so asked of the disk once */
const known = new WeakMap();

/**
 * This tablet's own id, made once and kept.
 * @param {Store} store
 * @returns {Promise<string>}
 */
export function deviceId(store) {
  if (!known.has(store)) {
    const asked = store.keep("device", newId());
    asked.catch(() => known.delete(store));
    known.set(store, asked);
  }
  return known.get(store);
}
