// Keeps the page on the tablet, so that it opens again without network; says plainly where that cannot be.

const WORKER = new URL("../worker.js", location.href.split("#")[0]).href;
const SCOPE = new URL("../", location.href.split("#")[0]).href;

/** What this tablet can do, filled in as the browser answers. "asking" until then. */
export const tablet = { restart: "asking", storage: "asking", newer: null };
const told = new EventTarget();

/** @param {() => void} listener called when `tablet` changes */
export function onTablet(listener) {
  told.addEventListener("changed", listener);
}

/** Asks the browser to keep the page and the store; never fails. */
export async function keepPage() {
  await Promise.all([keepFiles().catch(() => set({ restart: "no" })), keepStore().catch(() => set({ storage: "unknown" }))]);
}

/** Loads the newer page; only offered while nothing waits to be sent. */
export function takeNewer() {
  navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
  tablet.newer?.postMessage("take-over");
}

async function keepFiles() {
  if (!("serviceWorker" in navigator)) return set({ restart: "no" });
  const kept = await navigator.serviceWorker.register(WORKER, { scope: SCOPE, updateViaCache: "none" });
  kept.addEventListener("updatefound", () => watch(kept.installing));
  watch(kept.installing);
  // Browsers put their own look for a newer one off for as long as the page is busy, and this one always asks for news.
  if (navigator.serviceWorker.controller) kept.update().catch(() => {});
  if (kept.waiting) set({ newer: kept.waiting });
  await navigator.serviceWorker.ready;
  return set({ restart: "yes" });
}

function watch(worker) {
  worker?.addEventListener("statechange", () => {
    if (worker.state === "installed" && navigator.serviceWorker.controller) set({ newer: worker });
  });
}

async function keepStore() {
  const lasts = await navigator.storage?.persist?.();
  set({ storage: lasts === undefined ? "unknown" : lasts ? "kept" : "may-be-cleared" });
}

function set(change) {
  Object.assign(tablet, change);
  told.dispatchEvent(new Event("changed"));
}
