// The day's classes, standards and words: fresh from the server where it answers, else as last kept on this tablet.

import { t } from "./say.js";

const NOTE = "day";

/**
 * @param {import("./store.js").Store} store
 * @param {string} url
 * @returns {Promise<any>}
 */
export async function loadDay(store, url) {
  const fresh = await ask(url);
  if (fresh) {
    await store.note(NOTE, fresh);
    return fresh;
  }
  const kept = await store.recall(NOTE);
  if (kept) return kept;
  throw new Error(t("This tablet has not seen today's classes yet, and the server does not answer. Find the network once, then it works without."));
}

async function ask(url) {
  try {
    const response = await fetch(url, { headers: { Accept: "application/json" }, cache: "no-store", redirect: "error" });
    return response.ok ? await response.json() : null;
  } catch {
    return null;
  }
}
