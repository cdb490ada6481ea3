// How far this tablet's edits are, in one word that is never better than the truth.

/**
 * `state`: "all-on-server"; "waiting" (`waiting` edits are safe on this tablet only); "sign-in" (they are, and the
 * server asks to sign in again); "refused" (nothing waits, but `refused` edits stand aside with their text);
 * "storage-full", "storage-failed" (the last change is not safe). `heard` is when the server last answered, in ms;
 * `silent` why the last try had no answer: "network", "server", "sign-in" or "storage".
 * @typedef {{state: string, waiting: number, refused: number, heard: number | null, silent: string | null}} Status
 */

/**
 * @param {{waiting: number, refused: number, silent: string | null}} status
 * @param {string | null} trouble the store's
 * @returns {string}
 */
export function stateOf({ waiting, refused, silent }, trouble) {
  if (trouble) return `storage-${trouble}`;
  if (silent === "sign-in") return "sign-in";
  if (waiting) return "waiting";
  return refused ? "refused" : "all-on-server";
}
