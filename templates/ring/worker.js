// Opens the ring page without network. It keeps the page itself and nothing of anybody: data lives in the tablet's store.
const SHELL = "{{ shell }}";
const KEPT = "ring-{{ version }}";
const FILES = {{ files|safe }};
const PATIENCE_MS = 4000;
const RING_PAGE = /\/ring\/\d+\/$/;

// Never takes over by itself: a page that is open goes on with the files it was opened with.
addEventListener("install", (event) => event.waitUntil(keep()));
addEventListener("activate", (event) => event.waitUntil(Promise.all([clients.claim(), forget()])));
addEventListener("message", ({ data }) => data === "take-over" && skipWaiting());
addEventListener("fetch", (event) => {
  const { pathname, origin } = new URL(event.request.url);
  if (event.request.method !== "GET" || origin !== location.origin) return;
  if (event.request.mode === "navigate" && RING_PAGE.test(pathname)) event.respondWith(page(event.request));
  else if (FILES.includes(pathname)) event.respondWith(file(event.request));
});

async function keep() {
  const cache = await caches.open(KEPT);
  // The files' names change with their content, so those the page has just loaded need not cross the field again.
  await cache.addAll([new Request(SHELL, { cache: "reload" }), ...FILES]);
}

async function forget() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith("ring-") && name !== KEPT).map((name) => caches.delete(name)));
}

/** The server's page where it answers in time, else the one that was kept. */
async function page(request) {
  const kept = async () => (await caches.open(KEPT)).match(SHELL);
  const late = new Promise((resolve) => setTimeout(resolve, PATIENCE_MS)).then(kept);
  try {
    return (await Promise.race([fetch(request), late])) ?? (await fetch(request));
  } catch {
    return kept();
  }
}

async function file(request) {
  return (await (await caches.open(KEPT)).match(request.url)) ?? fetch(request);
}
