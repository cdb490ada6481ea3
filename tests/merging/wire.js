// A page with one store and one outbox, for tests to drive.

import * as changes from "/static/ring/changes.js";
import * as digests from "/static/ring/digest.js";
import * as ids from "/static/ring/ids.js";
import * as merging from "/static/ring/merge.js";
import { Outbox } from "/static/ring/outbox.js";
import { sha256 } from "/static/ring/sha256.js";
import { Store } from "/static/ring/store.js";

const store = new Store();
const told = [];
const failures = [];
store.addEventListener("storage-failed", (event) => failures.push(event.detail.full ? "full" : "failed"));
const answers = [];
const outbox = new Outbox(store, {
  url: "/edits",
  onStatus: (status) => told.push(status),
  onAnswers: (some) => answers.push(...some),
});

globalThis.tablet = {
  store, outbox, told, answers, failures, sha256,
  change: async (...told) => (await changes.change(...told)).at(-1),
  sign: async (...told) => (await changes.sign(...told)).at(-1),
  ...digests, ...ids, ...merging,
  merged(edits) {
    try {
      const { fields, signedBy, ...lists } = merging.merge(edits);
      const named = [...fields].map(([field, live]) => [field, live.map((edit) => edit.id)]);
      return { fields: Object.fromEntries(named), signed_by: signedBy, ...lists };
    } catch (error) {
      return { refused: error.message.split(":")[0] };
    }
  },
  settledSheet: async (sheet) => Object.fromEntries(merging.settled(merging.merge(await store.edits(sheet)))),
};
