// Opens the ring page without network. It keeps the page itself and nothing of anybody: data lives in the tablet's store.
const SHELL = "{{ shell }}";
const KEPT = "ring-{{ version }}";
const FILES = {{ files|safe }};
// Fetched and kept only once the page stands and asks for it, so that a first visit waits for none of it.
const PHOTO_SHELL = "{{ photo_shell }}";
const LATER = {{ later|safe }};
const PATIENCE_MS = 4000;
const RING_PAGE = /\/ring\/\d+\/$/;
const PHOTO_PAGE = /\/ring\/\d+\/photo\/$/;

// Never takes over by itself: a page that is open goes on with the files it was opened with.
addEventListener("install", (event) => event.waitUntil(keep()));
addEventListener("activate", (event) => event.waitUntil(Promise.all([clients.claim(), forget()])));
addEventListener("message", (event) => {
  if (event.data === "take-over") skipWaiting();
  else if (event.data === "keep-later") event.waitUntil(keepLater().then(() => event.source?.postMessage("later-kept"), () => {})); // else at the next start
});
addEventListener("fetch", (event) => {
  const { pathname, origin } = new URL(event.request.url);
  if (event.request.method !== "GET" || origin !== location.origin) return;
  if (event.request.mode === "navigate" && RING_PAGE.test(pathname)) event.respondWith(page(event.request, SHELL));
  else if (event.request.mode === "navigate" && PHOTO_PAGE.test(pathname)) event.respondWith(page(event.request, PHOTO_SHELL));
  else if (FILES.includes(pathname) || LATER.includes(pathname)) event.respondWith(file(event.request));
});

async function keep() {
  const cache = await caches.open(KEPT);
  // The files' names change with their content, so those the page has just loaded need not cross the field again.
  await cache.addAll([new Request(SHELL, { cache: "reload" }), ...FILES]);
}

async function keepLater() {
  const cache = await caches.open(KEPT);
  const has = await Promise.all([PHOTO_SHELL, ...LATER].map((name) => cache.match(name)));
  await cache.addAll(LATER.filter((_, index) => !has[index + 1]));
  // The page last: where it is kept, so is everything that it loads.
  if (!has[0]) await cache.add(new Request(PHOTO_SHELL, { cache: "reload" }));
}

async function forget() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith("ring-") && name !== KEPT).map((name) => caches.delete(name)));
}

/** The server's page where it answers in time, else the one that was kept. */
async function page(request, shell) {
  const kept = async () => (await caches.open(KEPT)).match(shell);
  const late = new Promise((resolve) => setTimeout(resolve, PATIENCE_MS)).then(kept);
  try {
    const answer = await Promise.race([fetch(request), late]);
    // A server that goes down answers in the 500s, or its proxy does for it.
    return answer && answer.status < 500 ? answer : (await kept()) ?? answer ?? (await fetch(request));
  } catch {
    return (await kept()) ?? new Response("This page is not on this tablet yet: go back, and open it once with the network.", { status: 503 });
  }
}

async function file(request) {
  return (await (await caches.open(KEPT)).match(request.url)) ?? fetch(request);
}
