// One text for one JSON value, letter for letter as the server writes it, and the digest of an edit.

import { sha256 } from "./sha256.js";

/** @typedef {import("./replacing.js").Edit} Edit */

/**
 * SHA-256, in hex, of the edit's eight members as canonical JSON; a server's `seq` and `by` do not enter it.
 * @param {Edit} edit
 * @returns {Promise<string>}
 */
export async function digest(edit) {
  const { v, id, sheet, field, value, replaces, made_at, device } = edit;
  const content = canonical({ v, id, sheet, field, value, replaces, made_at, device });
  const bytes = new TextEncoder().encode(content);
  if (!globalThis.crypto?.subtle) return sha256(bytes);
  const hash = await crypto.subtle.digest("SHA-256", bytes);
  return Array.from(new Uint8Array(hash), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/**
 * Canonical JSON after RFC 8785 (IETF, 2020): members sorted by UTF-16 code units, no spaces.
 * @param {any} value
 * @returns {string}
 */
export function canonical(value) {
  if (Array.isArray(value)) return `[${value.map(canonical).join(",")}]`;
  if (value === null || typeof value !== "object") return JSON.stringify(value);
  const members = Object.keys(value).sort().map((name) => `${JSON.stringify(name)}:${canonical(value[name])}`);
  return `{${members.join(",")}}`;
}
