// The page's words for what is set, shared by labels, the live region and undo.

const DEGREES = ["", "a little", "clearly", "far"];

/** @param {{low: string, high: string}} point @param {number} mark @returns {string} */
export function markWords(point, mark) {
  if (mark === 0) return "as the standard asks";
  return `${DEGREES[Math.abs(mark)]}: ${mark < 0 ? point.low : point.high}`;
}

/** @param {{number: number|null, id: number}} entry @returns {string} */
export function numberOf(entry) {
  return entry.number === null ? `entry ${entry.id}` : String(entry.number);
}

/** @param {number} months @returns {string} */
export function age(months) {
  if (months < 24) return `${months} month${months === 1 ? "" : "s"}`;
  const years = Math.floor(months / 12);
  const rest = months % 12;
  return rest ? `${years} years ${rest} month${rest === 1 ? "" : "s"}` : `${years} years`;
}

/** @param {{breed_name: string, sex: string, name: string}} one @returns {string} */
export function classWords(one) {
  return `${one.breed_name}, ${one.sex === "dog" ? "dogs" : "bitches"}, ${one.name.toLowerCase()} class`;
}

/** A finding in words, with catalogue numbers for entries. */
export function findingWords(finding, sentences, numbers) {
  const told = sentences[finding.code];
  if (!told) return `${finding.code.replaceAll("-", " ")}.`;
  return told.replace(/\{(\w+)\}/g, (_, name) => wordsOf(finding.facts[name], numbers));
}

function wordsOf(value, numbers) {
  if (Array.isArray(value)) return value.map((each) => wordsOf(each, numbers)).join(", ");
  if (value === null || value === undefined) return "nothing";
  return numbers.get(String(value)) ?? String(value).replaceAll("-", " ");
}

/** @param {import("./status.js").Status} status @returns {string} */
export function statusWords({ state, waiting, refused }) {
  const edits = `${waiting} edit${waiting === 1 ? " is" : "s are"} safe on this tablet`;
  switch (state) {
    case "all-on-server": return "Everything is on the server";
    case "waiting": return edits;
    case "sign-in": return `Sign in again: ${waiting ? edits : "everything written is kept"}`;
    case "refused": return `${refused} refused, the text is kept`;
    case "storage-full": return "This tablet's storage is full: the last change is not safe";
    case "storage-failed": return "This tablet cannot store: the last change is not safe";
    default: return "Looking for the server";
  }
}
