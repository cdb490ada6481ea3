// The line-up: a shortlist, then places by tapping numbers in order; advice beside it, the judge's word above it.

import { toggled } from "./answers.js";
import { adviceOf } from "./advice.js";
import { disputeParts } from "./disputes.js";
import { fill, h, mark, say } from "./dom.js";
import { latest, press, waits } from "./latest.js";
import { ofCard } from "./said.js";
import { t } from "./say.js";
import { signingOf } from "./signing-desk.js";
import { mayBePlaced, placesOf, standingOf } from "./standing.js";
import { numberOf, standingWords } from "./words.js";

/**
 * @param {import("./book.js").Book} book
 * @param {any} day
 * @param {any} one the class
 * @param {{advice: string, back: () => void, read: () => void, announce: (text: string) => void}} page
 */
export function lineUpOf(book, day, one, page) {
  const places = () => latest(book, one.sheet, "places") ?? [];
  const shortlist = () => latest(book, one.sheet, "shortlist") ?? [];
  const entryOf = (id) => one.entries.find((entry) => String(entry.id) === id);
  const setPlaces = (list, words) => {
    page.announce(words);
    return book.set(one.sheet, "places", list.length ? list : null, t("the places"));
  };
  const tiles = one.entries.map((entry) => tileOf(entry));
  function tileOf(entry) {
    const id = String(entry.id);
    const state = h("span", { class: "state" });
    const place = h("button", { type: "button", class: "tile", onclick: () => tap(entry, id) }, h("span", { class: "number" }, numberOf(entry)), state);
    const keep = h("button", { type: "button", class: "plain keep", onclick: () => book.set(one.sheet, "shortlist", toggled(shortlist(), id), t("the shortlist")) }, t("Shortlist"));
    return { entry, id, place, keep, state, element: h("div", { class: "choice" }, place, keep) };
  }
  function tap(entry, id) {
    const placed = places().includes(id);
    if (!placed && places().length >= day.show.places) {
      page.announce(t("{n} dogs are placed already. Tap a placed number to take its place back.", { n: day.show.places }));
      return;
    }
    const list = toggled(places(), id);
    setPlaces(list, placed ? t("Number {number} has no place now", { number: numberOf(entry) }) : t("Number {number} is placed {place}", { number: numberOf(entry), place: list.length }));
  }
  const disputes = disputeParts(book, one.sheet, ofCard(one));
  const order = h("ol", { class: "order" });
  const beside = new Map();
  const advice = adviceOf(day, one, page.advice, (id) => beside.get(id));
  const title = h("h3", {}, t("Places"));
  const signing = signingOf(book, one, page.announce, page.maySign, page.read);
  const undo = h("button", { type: "button", class: "plain", onclick: () => book.undo() });
  const element = h("section", { class: "lineup", "aria-label": t("Line-up") },
    h("h2", { tabindex: "-1" }, t("Line-up")),
    h("p", { class: "help" }, t("While the class goes round, shortlist whom you want to see again. Then tap the numbers in order: first, second, third … A second tap takes the place back. {n} places at most.", { n: day.show.places })),
    disputes.element, h("div", { class: "choices" }, tiles.map((tile) => tile.element)),
    title, order, advice.element, signing.element,
    h("footer", { class: "foot" }, h("div", { class: "actions" }, undo, h("span", { class: "gap" }), h("button", { type: "button", onclick: page.back }, t("Back to the dogs")))));
  if (!page.mayDecide) for (const part of element.querySelectorAll(".disputes, .choices, .order")) part.inert = true;
  let drawn = null;
  function drawOrder() {
    const key = places().join();
    if (key === drawn) return;
    drawn = key;
    beside.clear();
    const focused = document.activeElement?.id;
    fill(order, places().map((id, index) => placeRow(id, index)));
    if (focused) document.getElementById(focused)?.focus();
    if (!key) fill(order, h("li", { class: "none" }, t("No dog is placed yet.")));
  }
  function placeRow(id, index) {
    const entry = entryOf(id);
    const shift = (by) => {
      const list = places().slice();
      [list[index], list[index + by]] = [list[index + by], list[index]];
      setPlaces(list, t("Number {number} is placed {place} now", { number: numberOf(entry), place: index + by + 1 }));
    };
    const last = index === places().length - 1;
    beside.set(id, h("ul", { class: "beside", "aria-live": "polite" }));
    return h("li", {}, h("span", { class: "place" }, String(index + 1)), h("span", { class: "number" }, entry ? numberOf(entry) : id),
      h("button", { type: "button", class: "plain", id: `up-${id}`, disabled: index === 0, onclick: () => shift(-1), "aria-label": t("Number {number} one place up", { number: entry ? numberOf(entry) : id }) }, t("Up")),
      h("button", { type: "button", class: "plain", id: `down-${id}`, disabled: last, onclick: () => shift(1), "aria-label": t("Number {number} one place down", { number: entry ? numberOf(entry) : id }) }, t("Down")), beside.get(id));
  }
  const update = () => {
    for (const { entry, id, place, keep, state } of tiles) {
      const at = places().indexOf(id);
      const may = mayBePlaced(book, one, entry);
      const standing = standingOf(book, one, entry);
      const grade = one.grades.find((each) => each.code === book.value(one.sheet, `grade.${id}`));
      say(state, at >= 0 ? t("placed {place}", { place: at + 1 }) : may && grade ? grade.name : standingWords(standing));
      place.disabled = !may && at < 0;
      press(place, placesOf(book, one).includes(id), at >= 0);
      mark(place, "data-standing", at >= 0 ? "placed" : standing);
      press(keep, Boolean(book.value(one.sheet, "shortlist")?.includes(id)), shortlist().includes(id));
      keep.disabled = !may;
      mark(keep, "aria-label", t("Shortlist number {number}", { number: numberOf(entry) }));
    }
    disputes.update();
    drawOrder();
    say(title, waits(book, one.sheet, "places") ? t("Places, waiting for your signature") : t("Places"));
    say(undo, book.undoWords ? t("Undo {words}", { words: book.undoWords }) : t("Undo"));
    undo.disabled = !book.undoWords;
    advice.update(JSON.stringify([places(), one.entries.map((entry) => [...book.values(entry.sheet)]), [...book.values(one.sheet)]]));
    signing.update();
  };
  return { element, update };
}
