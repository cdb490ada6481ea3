// Sentences this judge wrote by hand before, offered again: newest first, in the language of the text.

import { fill, h } from "./dom.js";
import { sentencesOf } from "./agreeing.js";
import { t } from "./say.js";

const NOTE = "own sentences";
const OFFERED = 8;
const KEPT = 60;
const SHORTEST = 8;

/** Keeps sentences for the next dog. @param {import("./store.js").Store} store @param {string} language @param {string[]} sentences */
export async function remember(store, language, sentences) {
  const fresh = sentences.filter((text) => text.length >= SHORTEST).map((text) => ({ text, language }));
  if (!fresh.length) return;
  const known = (await store.recall(NOTE)) ?? [];
  const others = known.filter((one) => !fresh.some(({ text }) => text === one.text));
  await store.note(NOTE, [...fresh.reverse(), ...others].slice(0, KEPT));
}

/**
 * A folded list of them beside a field; a tap puts one in.
 * @param {import("./store.js").Store} store
 * @param {import("./tongue.js").Tongue} tongue
 * @param {{insert: (text: string) => void}} field
 * @param {string} name of the field, for those who listen
 */
export function favouritesOf(store, tongue, field, name) {
  const list = h("div", { class: "options" });
  const element = h("details", { class: "favourites", hidden: true }, h("summary", {}, t("Words used before"), h("span", { class: "unseen" }, `: ${name}`)), list);
  const update = async () => {
    const known = ((await store.recall(NOTE)) ?? []).filter((one) => one.language === tongue.code).slice(0, OFFERED);
    element.hidden = !known.length;
    fill(list, known.map(({ text }) => h("button", { type: "button", class: "option", lang: tongue.code, onclick: () => field.insert(text) }, text)));
  };
  return { element, update };
}

/** What to remember of a remark when its field is left. */
export function rememberRemark(store, tongue, text) {
  return remember(store, tongue.code, sentencesOf(text));
}
