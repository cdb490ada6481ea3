// One change of a field, made here and now, as an edit kept on this tablet.

import { coversFor, FORMAT, merge, replacesFor } from "./merge.js";
import { deviceId, newId } from "./ids.js";

/** @typedef {import("./replacing.js").Edit} Edit */
/** @typedef {import("./store.js").Store} Store */

/**
 * Sets a field; resolves when the edit is kept, with all edits of the sheet, the new one last. It replaces every live
 * edit of the field that this tablet has seen.
 * @param {Store} store
 * @param {string} sheet
 * @param {string} field
 * @param {any} value
 * @param {(edits: Edit[]) => void} [foresee] as the store's
 * @returns {Promise<Edit[]>}
 */
export async function change(store, sheet, field, value, foresee) {
  const device = await deviceId(store);
  const made = (edits, unsent) => anEdit(device, sheet, field, value, replacesFor(edits, field, unsent));
  return store.set(sheet, made, foresee);
}

/**
 * Signs a sheet: covers every edit that is live on this tablet, held ones too, save those set aside. Resolves as `change`.
 * @param {Store} store
 * @param {string} sheet
 * @param {string[]} [aside] ids of all edits that are to stay out; those set aside now where not given
 * @returns {Promise<Edit[]>}
 */
export async function sign(store, sheet, aside) {
  const device = await deviceId(store);
  return store.set(sheet, (edits, unsent) => {
    const leftOut = aside ?? merge(edits).aside;
    const value = { covers: coversFor(edits, leftOut), aside: leftOut };
    return anEdit(device, sheet, "signature", value, replacesFor(edits, "signature", unsent));
  });
}

/** @returns {Edit} */
function anEdit(device, sheet, field, value, replaces) {
  return { v: FORMAT, id: newId(), sheet, field, value, replaces, made_at: new Date().toISOString(), device };
}
