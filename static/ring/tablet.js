// What this tablet can and cannot do, in words; what it still holds, as a file to hand over; what was refused.

import { fill, h, say } from "./dom.js";
import { reasonSaid } from "./reasons.js";
import { spoken, t } from "./say.js";
import { tongueChoice } from "./tongue.js";
import { onTablet, tablet, takeNewer } from "./worker-desk.js";

function restartWords(restart, hasWords) {
  switch (restart) {
    case "yes": return !hasWords ? t("The words of this language are not all on this tablet yet: leave it on the network until this line says so.") : t("This page opens again without network, also after the tablet was restarted.");
    case "no": return t("This tablet cannot restart without network: this address is not secure, so leave the page open. What is written is kept all the same.");
    default: return "";
  }
}

function storageWords(storage) {
  switch (storage) {
    case "kept": return t("The browser keeps what is written here until somebody clears it.");
    case "may-be-cleared": return t("The browser may clear what is written here when its storage runs short, or after seven days without use: look here on the morning of the show, and send everything before the tablet is put away.");
    case "unknown": return t("This browser does not say whether it keeps what is written here: send everything before the tablet is put away.");
    default: return "";
  }
}

/** @param {import("./store.js").Store} store @param {import("./outbox.js").Outbox} outbox @param {import("./tongue.js").Tongue} tongue */
export function tabletOf(store, outbox, tongue) {
  const restart = h("p");
  const storage = h("p");
  const newer = h("button", { type: "button", class: "plain", onclick: takeNewer }, t("A newer page is ready: load it"));
  const file = h("button", { type: "button", class: "plain", onclick: () => handOver(outbox) }, t("Hand over as a file"));
  const holds = h("p");
  const again = h("button", { type: "button", onclick: () => location.reload() }, t("Sign in or pair again"));
  const refused = h("ul", { class: "missing" });
  const element = h("section", { class: "tablet", "aria-label": t("This tablet") }, h("h2", {}, t("This tablet")), tongueChoice(tongue), restart, storage, holds, again, file, newer, refused);
  let shown = -1;
  const update = () => {
    say(restart, restartWords(tablet.restart, tongue.isKept));
    say(storage, storageWords(tablet.storage));
    const { waiting, refused: aside } = outbox.status;
    say(holds, waiting ? t("{n} edit waits for the server. Should it not come back, hand them over as a file: the office takes it in.|{n} edits wait for the server. Should it not come back, hand them over as a file: the office takes it in.", { n: waiting }) : t("Nothing waits on this tablet."));
    again.hidden = outbox.status.state !== "sign-in";
    file.hidden = !waiting && !aside;
    newer.hidden = !tablet.newer || waiting > 0;
    if (aside !== shown) showRefused(store, refused, update);
    shown = aside;
  };
  onTablet(() => element.isConnected && update());
  tongue.addEventListener("changed", () => element.isConnected && update());
  // `told`: the outbox has counted again.
  return { element, update, told: update };
}

async function showRefused(store, list, update) {
  const told = (await store.refused()).map((one) => ({ ...one, why: reasonSaid(one.reason ?? "", spoken()) }));
  fill(list, told.map(({ id, edit, why }) => h("li", {},
    h("p", {}, t("Refused:"), " ", h("span", { lang: why.lang }, why.words)), h("p", {}, t("{name}: {words}", { name: edit.field.replaceAll(".", " "), words: JSON.stringify(edit.value) })),
    h("button", { type: "button", class: "plain", onclick: async () => {
      await store.forgetRefused(id);
      await showRefused(store, list, update);
    } }, t("Seen")))));
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
