// What this tablet can and cannot do, in words; what it still holds, as a file to hand over; what was refused.

import { fill, h, say } from "./dom.js";
import { onTablet, tablet, takeNewer } from "./worker-desk.js";

const RESTART = {
  asking: "",
  yes: "This page opens again without network, also after the tablet was restarted.",
  no: "This tablet cannot restart without network: this address is not secure, so leave the page open. What is written is kept all the same.",
};
const STORAGE = {
  asking: "",
  kept: "The browser keeps what is written here until somebody clears it.",
  "may-be-cleared": "The browser may clear what is written here when its storage runs short, or after seven days without use: look here on the morning of the show, and send everything before the tablet is put away.",
  unknown: "This browser does not say whether it keeps what is written here: send everything before the tablet is put away.",
};

/** @param {import("./store.js").Store} store @param {import("./outbox.js").Outbox} outbox */
export function tabletOf(store, outbox) {
  const restart = h("p");
  const storage = h("p");
  const newer = h("button", { type: "button", class: "plain", onclick: takeNewer }, "A newer page is ready: load it");
  const file = h("button", { type: "button", class: "plain", onclick: () => handOver(outbox) }, "Hand over as a file");
  const holds = h("p");
  const refused = h("ul", { class: "missing" });
  const element = h("section", { class: "tablet", "aria-label": "This tablet" }, h("h2", {}, "This tablet"), restart, storage, holds, file, newer, refused);
  let shown = -1;
  const update = () => {
    say(restart, RESTART[tablet.restart]);
    say(storage, STORAGE[tablet.storage]);
    const { waiting, refused: aside } = outbox.status;
    say(holds, waiting ? `${waiting} edit${waiting === 1 ? "" : "s"} wait${waiting === 1 ? "s" : ""} for the server. Should it not come back, hand them over as a file: the office takes it in.` : "Nothing waits on this tablet.");
    file.hidden = !waiting && !aside;
    newer.hidden = !tablet.newer || waiting > 0;
    if (aside !== shown) showRefused(store, refused, update);
    shown = aside;
  };
  onTablet(() => element.isConnected && update());
  return { element, update };
}

async function showRefused(store, list, update) {
  fill(list, (await store.refused()).map(({ id, edit, reason }) => h("li", {},
    h("p", {}, `Refused: ${reason ?? ""}`), h("p", {}, `${edit.field.replaceAll(".", " ")}: ${JSON.stringify(edit.value)}`),
    h("button", { type: "button", class: "plain", onclick: async () => {
      await store.forgetRefused(id);
      await showRefused(store, list, update);
    } }, "Seen"))));
}

/** Saves everything that is on no server as a file. */
async function handOver(outbox) {
  const address = URL.createObjectURL(await outbox.file());
  const link = h("a", { href: address, download: `ring-edits-${new Date().toISOString().slice(0, 16).replaceAll(":", "")}.json` });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
