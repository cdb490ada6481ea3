// Who competes for an award, in one sentence, naming only classes that have dogs and awards that those can come to win.

import { apart, inside, listed, t } from "./say.js";

/**
 * @param {any} breed of the day
 * @param {any[]} classes of the breed that have dogs, in their order
 * @param {any} one the award as the breed offers it
 */
export function competesWords(breed, classes, one) {
  const own = classes.filter(({ sex }) => !one.sex || sex === one.sex);
  const phrases = one.lines.map((line) => phraseOf(breed, own, one, line)).filter(Boolean);
  if (!phrases.length) return "";
  const other = one.lines.map((line) => line.other_sex_than).find(Boolean);
  const who = apart(phrases);
  return other ? t("Competing: {who}, of the sex that {award} is not.", { who, award: awardName(breed, other) }) : t("Competing: {who}.", { who });
}

function phraseOf(breed, classes, one, line) {
  const known = whoOf(breed, classes, one, line);
  const who = known && line.unbeaten ? t("{who}, if unbeaten in other classes", { who: known }) : known;
  if (!who || !line.grades?.length) return who;
  const names = new Map(classes.flatMap((each) => each.grades).map(({ code, name }) => [code, name]));
  return t("{who}, with {grades}", { who, grades: listed(line.grades.map((code) => names.get(code) ?? code.replaceAll("-", " ")), "or") });
}

function whoOf(breed, classes, one, line) {
  if (line.second_to) return t("the second to the {award} in its class", { award: awardName(breed, line.second_to) });
  if (line.winners_of) {
    const reach = breed.awards.filter((each) => line.winners_of.includes(each.award) && (!one.sex || each.sex === one.sex));
    const won = [...new Set(reach.map(({ name }) => name))];
    return won.length ? t("who won {awards}", { awards: listed(won, "or") }) : "";
  }
  const named = [...new Map(classes.filter(({ code }) => line.classes?.includes(code)).map(({ code, name }) => [code, inside(name)])).values()];
  if (!named.length) return "";
  const facts = { classes: listed(named), n: named.length };
  if (!line.places?.length) return t("all dogs of the {classes} class|all dogs of the {classes} classes", facts);
  return t("the {places} of the {classes} class|the {places} of the {classes} classes", { ...facts, places: listed(line.places.map(placeWords)) });
}

/** @param {number} place */
export function placeWords(place) {
  switch (place) {
    case 1: return t("first");
    case 2: return t("second");
    case 3: return t("third");
    case 4: return t("fourth");
    case 5: return t("fifth");
    case 6: return t("sixth");
    default: return String(place);
  }
}

function awardName(breed, code) {
  return breed.awards.find((each) => each.award === code)?.name ?? code.replaceAll("-", " ");
}
