// Who competes for an award of a breed, by the rules of the server's `scoring/rules/awards.py` and `award_card.py`;
// shared cases hold the two together.

/** @typedef {{classes?: string[], places?: number[], grades?: string[], winners_of?: string[], second_to?: string, other_sex_than?: string, unbeaten?: boolean}} Line */
/** @typedef {{code: string, award: string, sex: string | null, may_be_withheld: boolean, lines: Line[]}} Offered an award as the breed offers it */
/** @typedef {{entry: string, sex: string, class_code: string, place: number | null, grade: string | null, dog?: string | null}} Standing one entry's result in one class; `dog` tells which entries are one dog's */
/** @typedef {Map<string, string | false>} Decided an entry, or false where withheld, by an offered award's code */

/**
 * The entries that compete for an award, in the order of the standings, each dog once.
 * @param {Offered[]} awards all that the breed offers
 * @param {Offered} one
 * @param {Standing[]} standings of the breed's signed classes
 * @param {Decided} decided
 * @returns {string[]}
 */
export function competing(awards, one, standings, decided) {
  const together = standings.filter(({ sex }) => !one.sex || sex === one.sex);
  const winners = (award) => awards.filter((each) => each.award === award).map(({ code }) => decided.get(code)).filter(Boolean);
  const held = (award) => together.filter(({ entry }) => winners(award).includes(entry));
  const out = one.lines.flatMap((line) => (line.second_to ? held(line.second_to).map(whose) : []));
  const found = new Map();
  for (const line of one.lines) for (const standing of together) {
    const dog = whose(standing);
    if (!found.has(dog) && !out.includes(dog) && takes(line, standing, together, held)) found.set(dog, standing);
  }
  const taken = new Set(found.values());
  return together.filter((standing) => taken.has(standing)).map(({ entry }) => entry);
}

/** Which dog a standing is of: the dog that it names, or the entry by itself. @param {{entry: string, dog?: string | null}} standing */
export function whose({ entry, dog }) {
  return dog ? `dog ${dog}` : `entry ${entry}`;
}

/** @typedef {(award: string) => Standing[]} Held the standings of those that an award went to */

/** @param {Line} line @param {Standing} standing @param {Standing[]} together @param {Held} held */
function takes(line, standing, together, held) {
  const { entry, sex, class_code, place, grade } = standing;
  if (line.grades && !line.grades.includes(grade ?? "")) return false;
  if (line.other_sex_than) {
    const holders = held(line.other_sex_than);
    if (!holders.length || holders.some((other) => other.sex === sex)) return false;
  }
  if (line.unbeaten && isBeaten(line, standing, together, held)) return false;
  if (line.second_to) return isSecondTo(line.second_to, standing, together, held);
  if (line.winners_of) return line.winners_of.some((award) => held(award).some((other) => other.entry === entry));
  return Boolean(line.classes?.includes(class_code)) && (!line.places || line.places.includes(place ?? 0));
}

/** Placed second in a class where the award's winner, by whatever entry, came first. */
function isSecondTo(award, standing, together, held) {
  const holders = held(award).map(whose);
  return standing.place === 2 && ofClass(standing, together).some((first) => first.place === 1 && holders.includes(whose(first)));
}

/** Behind another in another class of the line; behind the winner of `second_to` is none. */
function isBeaten(line, standing, together, held) {
  return together.some((other) => whose(other) === whose(standing) && other.sex === standing.sex
    && other.class_code !== standing.class_code && (line.classes?.includes(other.class_code) ?? true)
    && other.place !== 1 && ofClass(other, together).some(({ place }) => place)
    && !(line.second_to && isSecondTo(line.second_to, other, together, held)));
}

function ofClass({ sex, class_code }, together) {
  return together.filter((other) => other.sex === sex && other.class_code === class_code);
}

/**
 * The undecided awards on whose winners it depends who competes for this one.
 * @param {Offered[]} awards @param {Offered} one @param {Decided} decided @returns {Offered[]}
 */
export function waitsFor(awards, one, decided) {
  const named = new Set(one.lines.flatMap((line) => [...(line.winners_of ?? []), line.second_to, line.other_sex_than]));
  const depends = (other) => named.has(other.award) && (!one.sex || !other.sex || other.sex === one.sex);
  return awards.filter((other) => depends(other) && !decided.has(other.code));
}

/**
 * What does not go with the rules in a decision; the judge's word stands all the same.
 * @param {Offered[]} awards @param {Offered} one @param {Standing[]} standings @param {Decided} decided
 * @returns {{code: string, facts: Record<string, string>} | null}
 */
export function checked(awards, one, standings, decided) {
  const entry = decided.get(one.code);
  if (entry === false && !one.may_be_withheld) return { code: "award-not-to-be-withheld", facts: { award: one.award } };
  const dogOf = (id) => whose(standings.find((each) => each.entry === id) ?? { entry: id });
  if (!entry || competing(awards, one, standings, decided).map(dogOf).includes(dogOf(entry))) return null;
  return { code: "award-without-right", facts: { award: one.award, entry } };
}
