// The language of this tablet, one for the page and for the text it writes: chosen here, its words kept for work
// without network.

import { h } from "./dom.js";
import { speak, t } from "./say.js";

const NOTE = "tongue";
// How long the page waits for words it has never seen before it opens in English.
const PATIENCE_MS = 5000;
/** The languages that the page names a file of words for, English before them, each by its own name. */
export const TONGUES = Object.fromEntries(["en", ...[...document.querySelectorAll('meta[name^="words-"]')].map((meta) => meta.getAttribute("name").slice(6))]
  .map((code) => [code, new Intl.DisplayNames([code], { type: "language" }).of(code) ?? code]));

/**
 * The tablet's language, the names of the day in it and, by breed, its phrase tables; English stands in where words
 * have not come yet. Events: "spoken" where the page's own words have changed, "changed" where the text's have.
 */
export class Tongue extends EventTarget {
  #store;
  #day;
  #at;
  /** @type {Map<string, any>} */
  #tables = new Map();
  /** The notes with words that are on this tablet's disk. @type {Set<string>} */
  #kept = new Set();
  code = "en";
  /** Names of points, classes, grades, awards and breeds; null for English. @type {any} */
  names = null;

  /** @param {import("./store.js").Store} store @param {(path: string) => string} at */
  constructor(store, at) {
    super();
    this.#store = store;
    this.#at = at;
  }

  /** What was chosen here before, else the browser's language where the text can be written in it. */
  async open() {
    const kept = await this.#store.recall(NOTE);
    const asked = navigator.language.slice(0, 2).toLowerCase();
    this.code = kept ?? (asked in TONGUES ? asked : "en");
    const late = new Promise((resolve) => setTimeout(resolve, PATIENCE_MS));
    await Promise.race([this.#speak(), late]);
  }

  /** Takes the day, and fetches the words of the text for its breeds. @param {any} day */
  take(day) {
    this.#day = day;
    this.#fetchAll().catch(() => {});
  }

  /** @param {string} code */
  async choose(code) {
    this.code = code;
    await this.#store.note(NOTE, code);
    this.dispatchEvent(new Event("changed"));
    await Promise.all([this.#speak(), this.#fetchAll()]);
  }

  /** Whether all words of the language are on this tablet, for work without network. */
  get isKept() {
    const wanted = [...pageNotes(this.code), ...this.#breeds().map((breed) => phraseNote(this.code, breed))];
    return this.code === "en" || wanted.every((name) => this.#kept.has(name));
  }

  /** The phrase table to write with, and the language it is in. @param {string} breed */
  tableOf(breed) {
    const own = this.code === "en" ? this.#day.phrases?.[breed] : this.#tables.get(`${this.code} ${breed}`);
    return own ?? this.#day.phrases?.[breed];
  }

  /** Speaks with the words as last kept at once, then with the server's where those are others. */
  async #speak() {
    const { code } = this;
    if (code === "en") return this.#say(code, null, null);
    const sources = [wordsAddress(code), this.#at(`../words/${code}/`)];
    const notes = pageNotes(code);
    const kept = await Promise.all(notes.map((name) => this.#recall(name)));
    if (kept.every(Boolean)) this.#say(code, kept[0], kept[1]);
    const freshen = async () => {
      const fresh = await Promise.all(sources.map(ask));
      if (!fresh.every(Boolean) || JSON.stringify(fresh) === JSON.stringify(kept)) return;
      await Promise.all(notes.map((name, index) => this.#keep(name, fresh[index])));
      this.#say(code, fresh[0], fresh[1]);
    };
    return kept.every(Boolean) ? void freshen() : freshen();
  }

  #say(code, words, names) {
    if (code !== this.code) return;
    speak(code, words);
    this.names = names;
    this.dispatchEvent(new Event("spoken"));
  }

  async #fetchAll() {
    if (this.code === "en") return;
    await Promise.all(this.#breeds().map((breed) => this.#fetch(this.code, breed)));
    this.dispatchEvent(new Event("changed"));
  }

  /** As last kept at once, then fresh from the server where it answers. */
  async #fetch(code, breed) {
    const name = phraseNote(code, breed);
    const kept = await this.#recall(name);
    if (kept) this.#tables.set(`${code} ${breed}`, kept);
    const fresh = await ask(this.#at(`../phrases/${breed}/${code}/`));
    if (!fresh) return;
    this.#tables.set(`${code} ${breed}`, fresh);
    await this.#keep(name, fresh);
  }

  #breeds() {
    return [...new Set((this.#day?.classes ?? []).map((one) => one.breed))];
  }

  async #recall(name) {
    const kept = await this.#store.recall(name);
    if (kept) this.#kept.add(name);
    return kept;
  }

  async #keep(name, words) {
    await this.#store.note(name, words);
    this.#kept.add(name);
  }
}

/** Under which notes the page's own words and the day's names are kept. @param {string} code */
function pageNotes(code) {
  return [`page ${code}`, `names ${code}`];
}

/** @param {string} code @param {string} breed */
function phraseNote(code, breed) {
  return `phrases ${code} ${breed}`;
}

/** The choice of language. @param {Tongue} tongue */
export function tongueChoice(tongue) {
  const choice = h("select", { id: "tongue", onchange: () => tongue.choose(choice.value) },
    Object.entries(TONGUES).map(([code, name]) => h("option", { value: code, lang: code, selected: code === tongue.code }, name)));
  return h("div", { class: "tongue" }, h("label", { for: "tongue" }, t("Language of page and text")), choice);
}

/** Where the page's words in a language are: the page names the files, whose names change with their content. */
function wordsAddress(code) {
  return document.querySelector(`meta[name="words-${code}"]`)?.getAttribute("content");
}

/** @param {string | null | undefined} url */
async function ask(url) {
  if (!url) return null;
  try {
    const response = await fetch(url, { headers: { Accept: "application/json" }, redirect: "error" });
    return response.ok ? await response.json() : null;
  } catch {
    return null;
  }
}
