// Who competes for an award of a breed, by the rules of the server's `scoring/rules/awards.py` and `award_card.py`;
// shared cases hold the two together.

/** @typedef {{classes?: string[], places?: number[], grades?: string[], winners_of?: string[], second_to?: string, other_sex_than?: string}} Line */
/** @typedef {{code: string, award: string, sex: string | null, may_be_withheld: boolean, lines: Line[]}} Offered an award as the breed offers it */
/** @typedef {{entry: string, sex: string, class_code: string, place: number | null, grade: string | null}} Standing one entry's result in one class */
/** @typedef {Map<string, string | false>} Decided an entry, or false where withheld, by an offered award's code */

/**
 * The entries that compete for an award, in the order of the standings, each once.
 * @param {Offered[]} awards all that the breed offers
 * @param {Offered} one
 * @param {Standing[]} standings of the breed's signed classes
 * @param {Decided} decided
 * @returns {string[]}
 */
export function competing(awards, one, standings, decided) {
  const together = standings.filter(({ sex }) => !one.sex || sex === one.sex);
  const winners = (award) => awards.filter((each) => each.award === award).map(({ code }) => decided.get(code)).filter(Boolean);
  const beaten = one.lines.flatMap((line) => (line.second_to ? winners(line.second_to) : []));
  const taken = together.filter((standing) => one.lines.some((line) => takes(line, standing, together, winners)));
  return [...new Set(taken.map(({ entry }) => entry))].filter((entry) => !beaten.includes(entry));
}

/** @param {Line} line @param {Standing} standing @param {Standing[]} together @param {(award: string) => any[]} winners */
function takes(line, standing, together, winners) {
  const { entry, sex, class_code, place, grade } = standing;
  const held = (award) => together.filter((other) => winners(award).includes(other.entry));
  if (line.grades && !line.grades.includes(grade ?? "")) return false;
  if (line.other_sex_than) {
    const holders = held(line.other_sex_than);
    if (!holders.length || holders.some((other) => other.sex === sex)) return false;
  }
  if (line.second_to) {
    const firsts = held(line.second_to).filter((other) => other.place === 1);
    return place === 2 && firsts.some((first) => first.sex === sex && first.class_code === class_code);
  }
  if (line.winners_of) return line.winners_of.some((award) => winners(award).includes(entry));
  return Boolean(line.classes?.includes(class_code)) && (!line.places || line.places.includes(place ?? 0));
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
  if (!entry || competing(awards, one, standings, decided).includes(entry)) return null;
  return { code: "award-without-right", facts: { award: one.award, entry } };
}
