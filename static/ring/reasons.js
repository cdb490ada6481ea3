// Why the server does not count an edit: kept in English beside the edit, told apart by its sentence and said here in
// the page's language.

const FACT = /\{(\w+)\}/g;
/** @type {{shape: RegExp, facts: string[], said: string}[]} */
let sentences = [];
/** @type {Record<string, string>} */
let known = {};

/** From now on reasons are said with these; null for English. @param {{reasons: Record<string, string>, facts: Record<string, string>, breeds: Record<string, string>} | null} names */
export function takeReasons(names) {
  known = { ...names?.breeds, ...names?.facts };
  sentences = Object.entries(names?.reasons ?? {}).map(([english, said]) => ({
    shape: new RegExp(`^${english.split(FACT).map((part, n) => (n % 2 ? "(.+?)" : escaped(part))).join("")}$`, "s"),
    facts: [...english.matchAll(FACT)].map((found) => found[1]),
    said,
  }));
}

/** The words, and the language they are in: a reason that is not known here is said as the server wrote it. @param {string} kept @param {string} language */
export function reasonSaid(kept, language) {
  for (const { shape, facts, said } of sentences) {
    const found = shape.exec(kept);
    if (found) return { lang: language, words: said.replace(FACT, (whole, name) => told(found[facts.indexOf(name) + 1]) ?? whole) };
  }
  return { lang: "en", words: kept };
}

/** @param {string | undefined} fact */
function told(fact) {
  return fact && (known[fact] ?? fact);
}

/** @param {string} text */
function escaped(text) {
  return text.replace(/[.*+?^${}()|[\]\\/]/g, "\\$&");
}
