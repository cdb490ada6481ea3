// How the edits of one sheet merge, by the rules of the server's `scoring/merging.py`; shared cases hold the two together.

import { canonical, digest } from "./digest.js";
import { valueKey } from "./fields.js";
import { liveEdits, replacedClosure } from "./replacing.js";
import { signing } from "./signing.js";

export { digest };

export const FORMAT = 1;
const SIGNATURE = "signature";

/** @typedef {import("./replacing.js").Edit} Edit */
/** @typedef {import("./replacing.js").Edits} Edits */
/**
 * One sheet as its edits leave it; lists are sorted, `fields` holds each field's live edits.
 * @typedef {{fields: Map<string, Edit[]>, disputed: string[], incomplete: string[], held: string[],
 *            aside: string[], signedBy: string[], pending: string[]}} Merged
 */

/**
 * Whether an edit says anything: the server keeps some aside until somebody decides, and has refused others. Those that
 * name such a one do not wait for it, but no signature can cover it.
 * @param {Edit} edit
 */
export function counts({ state = "taken" }) {
  return state === "taken";
}

/**
 * The sheet that these edits make. Throws where two edits share an id and differ, or sheets are mixed.
 * @param {Iterable<Edit>} edits
 * @returns {Merged}
 */
export function merge(edits) {
  const all = [...edits];
  const known = byId(all.filter(counts));
  const { signatures, others } = apart(known);
  const said = signing(signatures, known);
  const signed = replacedClosure(said.covers ?? [], others);
  const aside = new Set([...said.aside].filter((id) => others.has(id) && !signed.has(id)));
  const counted = said.covers === null ? new Set([...others.keys()].filter((id) => !aside.has(id))) : signed;
  const fields = new Map([...liveFields(others, counted), ...liveFields(signatures, signatures)].sort(byName));
  const standing = [...[...counted].map((id) => others.get(id)), ...signatures.values()];
  const incomplete = waiting(standing, new Set(all.map(({ id }) => id)));
  if (said.pending.length) incomplete.add(SIGNATURE);
  return {
    fields,
    disputed: [...fields].filter(([field, live]) => !incomplete.has(field) && !agree(live)).map(([field]) => field),
    incomplete: [...incomplete].sort(),
    held: [...known.keys()].filter((id) => !signatures.has(id) && !counted.has(id) && !aside.has(id)).sort(),
    aside: [...aside].sort(),
    signedBy: said.signedBy,
    pending: said.pending,
  };
}

/**
 * The value of every field that is neither disputed nor incomplete; null where it was emptied.
 * @param {Merged} merged
 * @returns {Map<string, any>}
 */
export function settled(merged) {
  const open = new Set([...merged.disputed, ...merged.incomplete]);
  const fields = [...merged.fields].filter(([field]) => !open.has(field));
  return new Map(fields.map(([field, live]) => [field, live[0].value]));
}

/**
 * The ids that a new edit of the field names: every live id this device has seen, held ones too, and all that its own
 * unsent chain replaced.
 * @param {Iterable<Edit>} edits of the sheet
 * @param {string} field
 * @param {Set<string>} [unsent] ids of this device's edits that no server has answered for
 * @returns {string[]}
 */
export function replacesFor(edits, field, unsent = new Set()) {
  const ofField = [...edits].filter((edit) => edit.field === field && edit.v === FORMAT && counts(edit));
  const seen = new Map(ofField.map((edit) => [edit.id, edit]));
  const live = liveEdits(seen, seen).map((edit) => edit.id);
  const chain = [...replacedClosure(live, seen)].filter((id) => unsent.has(id));
  return [...new Set([...live, ...chain.flatMap((id) => seen.get(id).replaces)])].sort();
}

/**
 * The ids that a new signature covers: every edit that is live, held ones too, once those set aside are left out.
 * @param {Iterable<Edit>} edits of the sheet
 * @param {string[]} [aside] ids that the new signature sets aside; those set aside now where not given
 * @returns {string[]}
 */
export function coversFor(edits, aside) {
  const known = byId([...edits].filter(counts));
  const { others } = apart(known);
  const leftOut = new Set(aside ?? merge(known.values()).aside);
  const counted = new Set([...others.keys()].filter((id) => !leftOut.has(id)));
  return liveFields(others, counted).flatMap(([, live]) => live.map((edit) => edit.id)).sort();
}

/** @param {Iterable<Edit>} edits @returns {Edits} */
function byId(edits) {
  const known = new Map();
  for (const edit of edits) {
    const first = known.get(edit.id) ?? edit;
    if (first !== edit && content(first) !== content(edit)) throw new Error(`id-reused: ${edit.id}`);
    if (known.size && known.values().next().value.sheet !== edit.sheet) throw new Error(`several-sheets: ${edit.id}`);
    known.set(edit.id, first);
  }
  return known;
}

/** @param {Edit} edit */
function content({ v, id, sheet, field, value, replaces, made_at, device }) {
  return canonical([v, id, sheet, field, value, replaces, made_at, device]);
}

/** The signatures and the other edits, those in an unknown format left out. @param {Edits} known */
function apart(known) {
  const readable = [...known].filter(([, edit]) => edit.v === FORMAT);
  return {
    signatures: new Map(readable.filter(([, edit]) => edit.field === SIGNATURE)),
    others: new Map(readable.filter(([, edit]) => edit.field !== SIGNATURE)),
  };
}

/** @param {Edits} edits @param {{has(id: string): boolean}} counted @returns {[string, Edit[]][]} */
function liveFields(edits, counted) {
  const byField = new Map();
  for (const [id, edit] of edits) {
    if (!byField.has(edit.field)) byField.set(edit.field, new Map());
    byField.get(edit.field).set(id, edit);
  }
  const merged = [...byField].map(([field, ofField]) => [field, liveEdits(ofField, counted)]);
  return merged.filter(([, live]) => live.length);
}

/** The fields of edits that replace an id not known. @param {Edit[]} edits @param {{has(id: string): boolean}} known */
function waiting(edits, known) {
  return new Set(edits.filter((edit) => edit.replaces.some((id) => !known.has(id))).map((edit) => edit.field));
}

/** @param {Edit[]} live */
function agree(live) {
  return new Set(live.map((edit) => valueKey(edit.field, edit.value))).size === 1;
}

/** @param {[string, any]} one @param {[string, any]} other */
function byName([one], [other]) {
  return one < other ? -1 : Number(one > other);
}
