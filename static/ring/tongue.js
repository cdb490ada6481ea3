// The language the judge writes in: chosen on this tablet, and the words of the text in it, kept for work without network.

import { h } from "./dom.js";

const NOTE = "tongue";
/** @type {Record<string, string>} */
export const TONGUES = { en: "English", fr: "français", de: "Deutsch", es: "español" };

/**
 * The tablet's language and, by breed, its phrase tables; English stands in where a table has not come yet.
 */
export class Tongue extends EventTarget {
  #store;
  #day;
  #at;
  /** @type {Map<string, any>} */
  #tables = new Map();
  code = "en";

  /** @param {import("./store.js").Store} store @param {any} day @param {(path: string) => string} at */
  constructor(store, day, at) {
    super();
    this.#store = store;
    this.#day = day;
    this.#at = at;
  }

  /** What was chosen here before, else the browser's language where the text can be written in it. */
  async open() {
    const kept = await this.#store.recall(NOTE);
    const asked = navigator.language.slice(0, 2).toLowerCase();
    this.code = kept ?? (asked in TONGUES ? asked : "en");
    this.#fetchAll().catch(() => {});
  }

  /** @param {string} code */
  async choose(code) {
    this.code = code;
    await this.#store.note(NOTE, code);
    this.dispatchEvent(new Event("changed"));
    await this.#fetchAll();
  }

  /** The phrase table to write with, and the language it is in. @param {string} breed */
  tableOf(breed) {
    const own = this.code === "en" ? this.#day.phrases?.[breed] : this.#tables.get(`${this.code} ${breed}`);
    return own ?? this.#day.phrases?.[breed];
  }

  async #fetchAll() {
    if (this.code === "en") return;
    const breeds = [...new Set(this.#day.classes.map((one) => one.breed))];
    await Promise.all(breeds.map((breed) => this.#fetch(this.code, breed)));
    this.dispatchEvent(new Event("changed"));
  }

  /** As last kept at once, then fresh from the server where it answers. */
  async #fetch(code, breed) {
    const name = `phrases ${code} ${breed}`;
    const kept = await this.#store.recall(name);
    if (kept) this.#tables.set(`${code} ${breed}`, kept);
    const fresh = await ask(this.#at(`../phrases/${breed}/${code}/`));
    if (!fresh) return;
    this.#tables.set(`${code} ${breed}`, fresh);
    await this.#store.note(name, fresh);
  }
}

/** The choice of language. @param {Tongue} tongue */
export function tongueChoice(tongue) {
  const choice = h("select", { id: "tongue", onchange: () => tongue.choose(choice.value) },
    Object.entries(TONGUES).map(([code, name]) => h("option", { value: code, lang: code, selected: code === tongue.code }, name)));
  return h("div", { class: "tongue" }, h("label", { for: "tongue" }, "I write in"), choice);
}

async function ask(url) {
  try {
    const response = await fetch(url, { headers: { Accept: "application/json" }, redirect: "error" });
    return response.ok ? await response.json() : null;
  } catch {
    return null;
  }
}
