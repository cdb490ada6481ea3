// What the signatures of a sheet say together. The rules are those of the server's `scoring/signing.py`.

import { liveEdits } from "./replacing.js";

/** @typedef {import("./replacing.js").Edits} Edits */
/** @typedef {{covers: string[] | null, aside: string[]}} Signature `covers` is null where it withdraws */

/**
 * `covers` is null where no signature is in force; `signedBy` are those in force, `pending` those that wait.
 * @param {Edits} signatures
 * @param {{has(id: string): boolean}} known the ids that have arrived
 * @returns {{covers: Set<string> | null, aside: Set<string>, signedBy: string[], pending: string[]}}
 */
export function signing(signatures, known) {
  const complete = new Map();
  for (const [id, edit] of signatures) {
    const said = readSignature(edit.value);
    if (said && (said.covers ?? []).every((covered) => known.has(covered))) complete.set(id, said);
  }
  const inForce = liveEdits(signatures, complete).map((edit) => edit.id);
  const signedBy = inForce.filter((id) => complete.get(id).covers !== null);
  return {
    covers: signedBy.length ? new Set(signedBy.flatMap((id) => complete.get(id).covers)) : null,
    aside: new Set(inForce.flatMap((id) => complete.get(id).aside)),
    signedBy,
    pending: liveEdits(signatures, signatures).map((edit) => edit.id).filter((id) => !complete.has(id)),
  };
}

/**
 * The signature in one value: a list of ids, null, or an object with `covers` and perhaps `aside`; null where the
 * value cannot be read as one.
 * @param {any} value
 * @returns {Signature | null}
 */
export function readSignature(value) {
  const plain = value === null || typeof value !== "object" || Array.isArray(value);
  const said = plain ? { covers: value } : value;
  const { covers, aside = [] } = said;
  const readable = (covers === null || areIds(covers)) && areIds(aside);
  return readable ? { covers, aside } : null;
}

/** @param {any} value */
function areIds(value) {
  return Array.isArray(value) && value.every((id) => typeof id === "string");
}
