// Which of one field's edits stand when some of them replace others.

/**
 * One change of one field of one sheet, made on one device.
 * @typedef {{v: number, id: string, sheet: string, field: string, value: any, replaces: string[],
 *            made_at: string, device: string, seq?: number, by?: string, state?: string, reason?: string}} Edit
 * @typedef {Map<string, Edit>} Edits by id
 */

/**
 * The live ones of one field's edits, in the order of their ids, where only the counted ones count.
 *
 * An edit is live unless another one replaces it that is not on a cycle with it. An edit that does not count hands on
 * what it replaces: whoever replaces it replaces that too.
 * @param {Edits} edits
 * @param {{has(id: string): boolean}} counted
 * @returns {Edit[]}
 */
export function liveEdits(edits, counted) {
  const standing = [...edits.keys()].filter((id) => counted.has(id)).sort();
  // Nearly every field is set once, and a mark waits for this on a slow tablet.
  if (standing.length < 2) return standing.map((id) => edits.get(id));
  const arrows = new Map(standing.map((id) => [id, replacedBy(id, edits, counted)]));
  const cycle = cycles(arrows);
  const dead = new Set();
  for (const [newer, replaced] of arrows) {
    for (const older of replaced) if (cycle.get(older) !== cycle.get(newer)) dead.add(older);
  }
  return standing.filter((id) => !dead.has(id)).map((id) => edits.get(id));
}

/**
 * The counted edits that this one replaces, itself or through edits that do not count.
 * @param {string} newer
 * @param {Edits} edits
 * @param {{has(id: string): boolean}} counted
 */
function replacedBy(newer, edits, counted) {
  const found = new Set();
  const seen = new Set([newer]);
  const waiting = [newer];
  while (waiting.length) {
    for (const older of knownReplaced(edits.get(waiting.pop()), edits)) {
      if (seen.has(older)) continue;
      seen.add(older);
      if (counted.has(older)) found.add(older);
      else waiting.push(older);
    }
  }
  return found;
}

/**
 * These edits and everything they replace, step by step, within their fields; unknown ids are left out.
 * @param {Iterable<string>} ids
 * @param {Edits} edits
 * @returns {Set<string>}
 */
export function replacedClosure(ids, edits) {
  const found = new Set();
  const waiting = [...ids].filter((id) => edits.has(id));
  while (waiting.length) {
    const id = waiting.pop();
    if (found.has(id)) continue;
    found.add(id);
    waiting.push(...knownReplaced(edits.get(id), edits));
  }
  return found;
}

/** Replacing only counts within a field. @param {Edit} edit @param {Edits} edits */
function knownReplaced(edit, edits) {
  return edit.replaces.filter((id) => edits.get(id)?.field === edit.field);
}

/**
 * Names each id's cycle by one of its members; an id on no cycle is alone in its own. Strongly connected components,
 * by the two walks of Kosaraju and Sharir.
 * @param {Map<string, Set<string>>} arrows
 */
function cycles(arrows) {
  const backward = new Map([...arrows.keys()].map((id) => [id, []]));
  for (const [source, targets] of arrows) for (const target of targets) backward.get(target).push(source);
  const cycle = new Map();
  for (const root of leftLast(arrows).reverse()) {
    const waiting = [root];
    while (waiting.length) {
      const id = waiting.pop();
      if (cycle.has(id)) continue;
      cycle.set(id, root);
      waiting.push(...backward.get(id));
    }
  }
  return cycle;
}

/** The ids in the order in which a walk along the arrows leaves them. @param {Map<string, Set<string>>} arrows */
function leftLast(arrows) {
  const order = [];
  const entered = new Set();
  const waiting = [...arrows.keys()].map((id) => ({ id, leaving: false }));
  while (waiting.length) {
    const { id, leaving } = waiting.pop();
    if (leaving) order.push(id);
    else if (!entered.has(id)) {
      entered.add(id);
      waiting.push({ id, leaving: true }, ...[...arrows.get(id)].map((target) => ({ id: target, leaving: false })));
    }
  }
  return order;
}
