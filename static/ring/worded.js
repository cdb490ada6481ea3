// The day in the page's language: points, classes, grades, awards and breeds under their names there.

import { findingsSaid } from "./say.js";

/**
 * @param {any} day as the server tells it, in English
 * @param {any} names of one language, by code; null for English
 * @returns {any} the day; what the standards ask stays English
 */
export function worded(day, names) {
  if (!names) return day;
  const breedOf = (name) => names.breeds[name] ?? name;
  return {
    ...day,
    sentences: { ...day.sentences, ...findingsSaid() },
    classes: day.classes.map((one) => classIn(names, one, breedOf)),
    breeds: day.breeds?.map((breed) => breedIn(names, breed, breedOf)),
    standards: Object.fromEntries(Object.entries(day.standards).map(([code, standard]) => [code, { ...standard, name: breedOf(standard.name), points: standard.points.map((point) => pointIn(names, point)) }])),
  };
}

function breedIn(names, breed, breedOf) {
  const awards = breed.awards.map((one) => ({ ...one, name: names.awards[one.award] ?? one.name }));
  const elsewhere = breed.elsewhere?.map((one) => ({ ...one, name: names.classes[one.code] ?? one.name }));
  return { ...breed, name: breedOf(breed.name), awards, ...(elsewhere ? { elsewhere } : {}) };
}

function classIn(names, one, breedOf) {
  const grades = one.grades.map((grade) => ({ ...grade, name: names.grades[grade.code] ?? grade.name }));
  return { ...one, breed_name: breedOf(one.breed_name), name: names.classes[one.code] ?? one.name, grades };
}

function pointIn(names, point) {
  const [name, low, high] = names.points[point.code] ?? [];
  const options = point.options?.map((option) => ({ ...option, name: names.options[point.code]?.[option.code] ?? option.name }));
  return {
    ...point, name: name ?? point.name, section_name: names.sections[point.section],
    ...(low ? { low, high } : {}), ...(options ? { options } : {}),
  };
}

/** What codes in findings are called: points of the breed's standard and grades of its classes. @param {any} day @param {string} breed */
export function namesOfCodes(day, breed) {
  const grades = day.classes.filter((one) => one.breed === breed).flatMap((one) => one.grades);
  return new Map([...day.standards[breed].points, ...grades].map(({ code, name }) => [code, name]));
}
