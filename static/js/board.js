// Keeps the ring's board fresh while somebody looks: one plain request in fifteen seconds, mostly answered by "no news".

const EVERY_MS = 15_000;

async function look() {
  if (document.hidden) return;
  try {
    const answer = await fetch(location.href, { cache: "no-cache" });
    if (answer.ok) show(new DOMParser().parseFromString(await answer.text(), "text/html"));
  } catch {
    // No network: what is shown stays, and is looked for again.
  }
}

/** @param {Document} page the board as the server makes it now */
function show(page) {
  const [here, now] = [document.querySelector("main"), page.querySelector("main")];
  if (here && now && here.innerHTML !== now.innerHTML) here.replaceWith(document.adoptNode(now));
}

setInterval(look, EVERY_MS);
document.addEventListener("visibilitychange", look);
