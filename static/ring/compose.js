/**
 * From a sheet to sentences on the tablet: the same text as scoring/critique writes, from the same phrase table.
 * Nothing is worded here; phrases are chosen, ordered and joined. tests/critique/cases.json holds both together.
 *
 * @typedef {{point: string, section: string, short: string, full: string, matters: number, fault: boolean}} Phrase
 * @typedef {{sentences: string[], spans: string[][], text: string}} Critique
 */

const GENERAL = "general";
const SEX_TYPE = "sex-type";
const TEETH = "teeth";
const WAYS = "ways-of-moving";
const PRAISE = "praise";
const PLAIN = 2;
const NOTHING = ["", ""];

/**
 * The critique of one sheet, the same for the same sheet.
 *
 * @param {object} table the phrase table of the breed and language, as the server compiles it
 * @param {object} sheet what the judge says: sex, marks, praise, choices, teeth_missing, sets, numbers, yes, grade,
 *   reason, place
 * @returns {Critique} spans names for each sentence the points it speaks of
 */
export function compose(table, sheet) {
  const said = [...body(table, sheet), ...closing(table, sheet)];
  const sentences = said.map(([text]) => text);
  return { sentences, spans: said.map(([, points]) => points), text: sentences.join(" ") };
}

/** What the sheet says in the order of the table's points: one phrase a point, one for each way of moving. */
export function phrases(table, sheet) {
  const spoken = table.phrases[sheet.sex];
  return table.points
    .filter((point) => point.code in spoken)
    .flatMap((point) => ofPoint(table, spoken[point.code], point, sheet));
}

function ofPoint(table, spoken, { code, section }, sheet) {
  let told = toldOf(table, spoken, code, sheet);
  let praised = (sheet.praise ?? []).includes(code);
  if (praised && (told.length === 0 || (told.length === 1 && told[0][0] === "0"))) {
    told = [[PRAISE, NOTHING]];
    praised = false;
  }
  const found = told.map(([key, filling]) => phrase(code, section, spoken[key], filling));
  if (praised) found.push(withPraise(table, found.pop()));
  return found;
}

function phrase(point, section, [short, full, matters, fault], filling) {
  return { point, section, short: filled(short, filling[0]), full: filled(full, filling[1]), matters, fault };
}

/** A number or a list of teeth goes in its place, a side goes behind. */
function filled(wording, filling) {
  if (wording.includes("{}")) return wording.replaceAll("{}", () => filling);
  return filling ? `${wording} ${filling}` : wording;
}

function withPraise(table, phrase) {
  const note = phrase.fault ? table.praised_fault : table.praised;
  return { ...phrase, short: labelled(phrase.short, note), full: labelled(phrase.full, note) };
}

/** A note goes behind the text, but before a closing comma of the text's own. */
function labelled(text, note) {
  return text.endsWith(",") ? `${text.slice(0, -1)} ${note},` : `${text} ${note}`;
}

/** The keys of a point's phrases, each with what fills the short and the full wording. */
function toldOf(table, spoken, code, sheet) {
  const given = (group) => sheet[group]?.[code] ?? null;
  if (given("marks") !== null) return [[String(given("marks")), NOTHING]];
  if (given("choices") !== null) return [[given("choices"), NOTHING]];
  if (given("numbers") !== null) return [["said", Array(2).fill(number(given("numbers"), table.decimal))]];
  if (given("yes") !== null) return [[given("yes") ? "yes" : "no", NOTHING]];
  const set = given("sets") ?? (code === TEETH ? (sheet.teeth_missing ?? null) : null);
  if (set === null) return [];
  return code === WAYS ? waysOf(table, spoken, set) : [teethOf(table, set)];
}

function number(value, decimal) {
  return String(value).replace(".", decimal);
}

function teethOf(table, missing) {
  const named = [...new Set(missing)].sort((a, b) => a - b).map((tooth) => table.teeth[tooth]);
  const key = ["none", "one", "several"][Math.min(named.length, 2)];
  return [key, [0, 1].map((wording) => listed(table, named.map((name) => name[wording])))];
}

/** The ways of moving in the standard's order, each once. */
function waysOf(table, spoken, given) {
  if (given.length === 0) return [["none", NOTHING]];
  const order = Object.keys(spoken);
  const found = new Map();
  for (const value of given) {
    const { way, side, degree } = typeof value === "string" ? { way: value } : value;
    const rank = [String(order.indexOf(`${way}/1`)).padStart(3, "0"), side ?? "", degree ?? PLAIN].join(" ");
    const words = side ? table.sides[side] : "";
    found.set(rank, [`${way}/${degree ?? PLAIN}`, [words, words]]);
  }
  return [...found.keys()].sort().map((rank) => found.get(rank));
}

/** Each phrase in its short wording, and in its full one as long as the text has room for what matters. */
function atLength(said, { enough, room, grave }) {
  const words = (text) => text.split(" ").length;
  let total = said.reduce((sum, phrase) => sum + words(phrase.short), 0);
  const worded = said.map((phrase) => ({ ...phrase, text: phrase.short }));
  for (const phrase of [...worded].sort((a, b) => b.matters - a.matters)) {
    if (total < enough || (phrase.matters >= grave && total < room)) {
      phrase.text = phrase.full;
      total += words(phrase.full) - words(phrase.short);
    }
  }
  return worded;
}

/** The sentences on the dog: its sex and general points first, then one a section, or more where it is long. */
function body(table, sheet) {
  const sentences = [];
  for (const found of bySection(atLength(phrases(table, sheet), table.limits))) {
    for (const part of parts(found, table.limits.longest)) {
      const points = [...new Set(part.map((phrase) => phrase.point))];
      sentences.push([worded(table, sheet, part, sentences.length === 0), points]);
    }
  }
  return sentences;
}

function bySection(said) {
  const groups = new Map();
  for (const phrase of said) groups.set(phrase.section, [...(groups.get(phrase.section) ?? []), phrase]);
  return groups.values();
}

/** A long list in as few parts as will do, the earlier ones not shorter than the later. */
function parts(found, longest) {
  const count = Math.ceil(found.length / longest);
  const size = Math.floor(found.length / count);
  const more = found.length % count;
  const start = (index) => index * size + Math.min(index, more);
  return Array.from({ length: count }, (_, index) => found.slice(start(index), start(index + 1)));
}

function worded(table, sheet, part, first) {
  const { section } = part[0];
  if (section === GENERAL) return sentence(onTheAnimal(table, sheet, part));
  const words = table.sections[sheet.sex][section];
  return sentence((first ? words.opening : words.lead) + listed(table, part.map((phrase) => phrase.text), "last"));
}

/** The word for the animal, told by its sex type where that was assessed, then what is said of it. */
function onTheAnimal(table, sheet, part) {
  const subject = part.find((phrase) => phrase.point === SEX_TYPE)?.text ?? table.subject[sheet.sex];
  const rest = part.filter((phrase) => phrase.point !== SEX_TYPE).map((phrase) => phrase.text);
  return rest.length ? `${subject} ${listed(table, rest)}` : subject.replace(/,$/, "");
}

/** Grade and place, then the judge's reason as given. */
function closing(table, sheet) {
  const verdict = [];
  if (sheet.grade) verdict.push(table.grades[sheet.sex][sheet.grade]);
  if (sheet.place) {
    const places = table.places[sheet.sex];
    verdict.push(places[sheet.place] ?? places.further.replace("{}", String(sheet.place)));
  }
  const told = verdict.join(table.comma);
  const reason = (sheet.reason ?? "").replace(/[ \t\r\n]+/g, " ").replace(/^ | $/g, "");
  if (reason) return [[sentence((told ? told + table.colon : table.reason) + reason), []]];
  return told ? [[sentence(told), []]] : [];
}

/** One, two and three: commas between, and before the last the language's "and", or what closes a list there. */
function listed(table, texts, last = "and") {
  if (texts.length < 2) return texts.join("");
  return texts.slice(0, -1).join(table.comma) + table[last] + texts.at(-1);
}

/** A capital to begin with, and a full stop unless the judge's own words already end it. */
function sentence(text) {
  return text.slice(0, 1).toUpperCase() + text.slice(1) + (/[.!?…]$/.test(text) ? "" : ".");
}
