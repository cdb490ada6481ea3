// The sections of a sheet: what a folded one tells, and on a phone one open at a time, the next by itself.

import { t } from "./say.js";
import { markWords, optionWords } from "./words.js";

// Long enough for the second tap of a finger that takes a mark back.
const PAUSE_MS = 350;

/** What has been marked in a section, in one line. @param {import("./book.js").Book} book @param {string} sheet @param {any[]} points */
export function toldOf(book, sheet, points) {
  const asked = points.filter((point) => book.value(sheet, `mark.${point.code}`) === 0).length;
  const told = points.flatMap((point) => toldOfPoint(point, (kind) => book.value(sheet, `${kind}.${point.code}`)));
  return [...told, asked ? t("{asked} as asked", { asked }) : ""].filter(Boolean).join(", ");
}

function toldOfPoint(point, value) {
  const { name, unit } = point;
  const [mark, choice, number, yes, set] = ["mark", "choice", "number", "yes", "set"].map(value);
  return [
    mark ? `${name} ${markWords(point, mark)}` : "",
    choice ? `${name} ${optionWords(point, choice)}` : "",
    number === undefined ? "" : `${name} ${number} ${unit}`,
    yes === undefined ? "" : t("{name}: {words}", { name, words: yes ? t("yes") : t("no") }),
    set === undefined ? "" : t("{name}: {words}", { name, words: set.length ? set.map((each) => optionWords(point, each.way ?? each)).join(" ") : t("none") }),
    value("praise") ? t("{name} praised", { name }) : "",
  ];
}

/**
 * On a small screen one section is open at a time, and the mark that completes it opens the next.
 * @param {{element: HTMLDetailsElement, name: string, points: any[]}[]} sections
 * @param {(point: any) => boolean} isMarked
 * @param {(name: string) => void} open
 */
export function oneAtATime(sections, isMarked, open) {
  if (innerWidth >= 700) return;
  sections.forEach(({ element, points }, index) => {
    const isDone = () => points.filter(({ kind }) => kind === "two-sided").every(isMarked);
    element.name = "section";
    element.open = index === 0;
    element.addEventListener("click", ({ target }) => {
      const next = sections[index + 1];
      if (!next || !target.closest(".stop") || isDone()) return;
      setTimeout(() => element.open && isDone() && open(next.name), PAUSE_MS);
    });
  });
}
