// Sends what this tablet holds until the server has it, and tells the truth about how far that is.

import { Batches, settle } from "./batches.js";
import { askNews, NoAnswer, sendEdits } from "./exchange.js";
import { deviceId } from "./ids.js";
import { stateOf } from "./status.js";

/** @typedef {import("./store.js").Store} Store */
/** @typedef {import("./status.js").Status} Status */

const EVERY_MS = 15_000;
const LONGEST_PAUSE_MS = 60_000;
// The next tap, which often follows at once, finds the page idle.
const GATHER_MS = 250;

export class Outbox {
  #store;
  #options;
  #batches = new Batches();
  #listening = null;
  #sending = null;
  #again = false;
  #gathering = false;
  #pauseUntil = 0;
  #silences = 0;
  /** @type {Status} */
  status = { state: "waiting", waiting: 0, refused: 0, heard: null, silent: null };

  /**
   * @param {Store} store
   * @param {{url: string, cookie?: string, onStatus?: (status: Status) => void,
   *          onAnswers?: (answers: import("./exchange.js").Answer[]) => void, quiet?: () => Promise<void>}} options
   *   `quiet` resolves when the disk may be used without keeping a tap waiting
   */
  constructor(store, options) {
    this.#store = store;
    this.#options = { onStatus: () => {}, onAnswers: () => {}, quiet: async () => {}, ...options };
  }

  /** Sends now, soon after each edit, whenever the page or the network comes back, and every 15 s. */
  start() {
    this.stop();
    this.#listening = new AbortController();
    const { signal } = this.#listening;
    for (const name of ["online", "pageshow"]) addEventListener(name, () => this.send(), { signal });
    document.addEventListener("visibilitychange", () => document.hidden || this.send(), { signal });
    this.#store.addEventListener("kept", () => this.#gather(), { signal });
    this.#store.addEventListener("storage-failed", () => this.#report({}), { signal });
    const timer = setInterval(() => this.#nudge(), EVERY_MS);
    signal.addEventListener("abort", () => clearInterval(timer));
    return this.send();
  }

  stop() {
    this.#listening?.abort();
    this.#listening = null;
  }

  /** Sends all there is; resolves when the server has it or does not answer. Never rejects. @returns {Promise<void>} */
  send() {
    this.#again = true;
    this.#sending ??= this.#sendAll().finally(() => {
      this.#sending = null;
      return this.#again ? this.send() : undefined;
    });
    return this.#sending;
  }

  /** Everything that is on no server, as a file to keep. @returns {Promise<Blob>} */
  async file() {
    const kept = { edits: await this.#store.unsent(), refused: await this.#store.refused() };
    return new Blob([JSON.stringify(kept, null, 1)], { type: "application/json" });
  }

  /** What is set within a quarter of a second goes as one. */
  #gather() {
    if (this.#gathering) return;
    this.#gathering = true;
    setTimeout(() => {
      this.#gathering = false;
      if (this.#listening) this.#nudge();
    }, GATHER_MS);
  }

  /** Sends unless a pause after a failure is running; tells the count in either case. */
  #nudge() {
    return performance.now() >= this.#pauseUntil ? this.send() : this.#count();
  }

  async #sendAll() {
    try {
      while (this.#again) {
        this.#again = false;
        await this.#options.quiet();
        await this.#count();
        const left = await this.#round();
        this.#again ||= left;
      }
    } catch (error) {
      this.#again = false;
      this.#wait(error instanceof NoAnswer ? error.why : "storage");
    }
    await this.#count();
  }

  /** One exchange; true where more is waiting. */
  async #round() {
    const unsent = await this.#store.unsent();
    const batch = this.#batches.pick(unsent);
    const since = `since ${this.#options.url}`;
    const told = { since: (await this.#store.recall(since)) ?? 0, unsent: unsent.length - batch.length };
    const said = await this.#exchange(batch, { ...told, device: await deviceId(this.#store) });
    const { answered, refused } = await settle(batch, said.answers);
    await this.#options.quiet();
    await this.#store.take({ answered, refused, edits: said.edits, since, sequence: said.sequence });
    if (said.answers.length) this.#options.onAnswers(said.answers);
    const done = answered.length + refused.length;
    if (batch.length && !done) {
      this.#batches.failed(batch);
      throw new NoAnswer("server");
    }
    this.#heard();
    return unsent.length > done;
  }

  async #exchange(batch, told) {
    const { url, cookie } = this.#options;
    try {
      return batch.length ? await sendEdits(url, batch, told, cookie) : await askNews(url, told.since, told.device);
    } catch (error) {
      if (error.why === "server") this.#batches.failed(batch);
      throw error;
    }
  }

  #heard() {
    this.#silences = 0;
    this.#pauseUntil = 0;
    this.#batches.succeeded();
    this.status = { ...this.status, heard: Date.now(), silent: null };
  }

  /** Waits longer after each silence, and not in step with the other tablets. @param {string} why */
  #wait(why) {
    this.#silences += 1;
    const pause = Math.min(LONGEST_PAUSE_MS, 1000 * 2 ** this.#silences) * (0.5 + Math.random() / 2);
    this.#pauseUntil = performance.now() + pause;
    this.status = { ...this.status, silent: why };
    if (this.#listening) setTimeout(() => this.#listening && this.#nudge(), pause + 1);
  }

  async #count() {
    try {
      const [unsent, refused] = [await this.#store.unsent(), await this.#store.refused()];
      this.#report({ waiting: unsent.length, refused: refused.length });
    } catch {
      this.#report({});
    }
  }

  #report(counts) {
    const status = { ...this.status, ...counts };
    this.status = { ...status, state: stateOf(status, this.#store.trouble) };
    this.#options.onStatus(this.status);
  }
}
