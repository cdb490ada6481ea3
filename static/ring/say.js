// What the page says, in the language that was chosen. English stands in the code; every other language is one file,
// `words/<code>.json`, that is read only where it was chosen.

/** @typedef {Record<string, string>} Forms of a plural, by the category of `Intl.PluralRules` */
/** @typedef {{said: Record<string, string | Forms>, findings: Record<string, string>, keeps_capitals?: boolean}} Words */

const FACT = /\{(\w+)\}/g;
let code = "en";
/** @type {Words} */
let words = { said: {}, findings: {} };
let plurals = new Intl.PluralRules(code);

/** From now on the page speaks this language; English where its words have not come. @param {string} language @param {Words | null} known */
export function speak(language, known) {
  code = known ? language : "en";
  words = known ?? { said: {}, findings: {} };
  plurals = new Intl.PluralRules(code);
}

/** The language the page speaks now. */
export function spoken() {
  return code;
}

/** The sentences of findings in that language, by their code. */
export function findingsSaid() {
  return words.findings;
}

/**
 * A sentence of the page. The key is the English sentence, always written out where `t` is called; where it depends
 * on a count, both forms: t("{n} dog|{n} dogs", { n }).
 * @param {string} sentence
 * @param {Record<string, string | number | undefined>} [facts] for the names in braces
 * @returns {string}
 */
export function t(sentence, facts = {}) {
  const found = words.said[sentence] ?? (sentence.includes("|") ? english(sentence) : sentence);
  const form = typeof found === "string" ? found : found[plurals.select(Number(facts.n))] ?? found.other;
  return form.replace(FACT, (whole, name) => String(facts[name] ?? whole));
}

/** @param {string} sentence @returns {Forms} */
function english(sentence) {
  const [one, other] = sentence.split("|");
  return { one, other };
}

/** A name inside a sentence: without its capital, where the language does not keep it. @param {string} name */
export function inside(name) {
  return words.keeps_capitals ? name : name.toLowerCase();
}

/** A number with one decimal as the language writes it. @param {number} value */
export function decimal(value) {
  return new Intl.NumberFormat(code, { minimumFractionDigits: 1, maximumFractionDigits: 1 }).format(value);
}

/** Parts with commas of their own as a list: "a, b; c". @param {string[]} parts */
export function apart(parts) {
  return parts.length ? parts.reduce((told, part) => t("{told}; {part}", { told, part })) : "";
}

/** "1, 2 and 3", or with "or". @param {string[]} names @param {"and" | "or"} [last] */
export function listed(names, last = "and") {
  const type = last === "and" ? "conjunction" : "disjunction";
  return new Intl.ListFormat(code === "en" ? "en-GB" : code, { type }).format(names);
}
