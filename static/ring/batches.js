// Which edits go in the next batch, and which of them an answer lets go.

import { digest } from "./digest.js";

/** @typedef {import("./replacing.js").Edit} Edit */
/** @typedef {import("./store.js").Refused} Refused */

const MOST_EDITS = 50;
const MOST_CHARACTERS = 500_000;

export class Batches {
  #size = MOST_EDITS;
  #failures = new Map();

  /** The next batch, of those that were in the fewest failed ones first. @param {Edit[]} unsent @returns {Edit[]} */
  pick(unsent) {
    const failed = (edit) => this.#failures.get(edit.id) ?? 0;
    const batch = [];
    let characters = 0;
    for (const edit of [...unsent].sort((one, other) => failed(one) - failed(other)).slice(0, this.#size)) {
      characters += JSON.stringify(edit).length;
      if (batch.length && characters > MOST_CHARACTERS) break;
      batch.push(edit);
    }
    return batch;
  }

  /** A batch that the server chokes on goes last and the next is smaller, until what it chokes on stands alone. */
  failed(batch) {
    for (const { id } of batch) this.#failures.set(id, (this.#failures.get(id) ?? 0) + 1);
    this.#size = Math.max(1, Math.floor(batch.length / 2));
  }

  succeeded() {
    this.#size = Math.min(MOST_EDITS, this.#size * 2);
  }
}

/**
 * The edits of a batch that its answers name by id and by the digest of their content; the others stay.
 * @param {Edit[]} batch
 * @param {import("./exchange.js").Answer[]} answers
 * @returns {Promise<{answered: Edit[], refused: Refused[]}>}
 */
export async function settle(batch, answers) {
  const [answered, refused] = [[], []];
  const byId = new Map(answers.map((answer) => [answer.id, answer]));
  for (const edit of batch) {
    const answer = byId.get(edit.id);
    if (answer?.digest !== await digest(edit)) continue;
    if (answer.state === "refused") refused.push({ id: edit.id, edit, reason: String(answer.reason ?? "") });
    else answered.push(edit);
  }
  return { answered, refused };
}
